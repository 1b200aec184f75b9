import assert from 'node:assert/strict';
import { TestClient } from './testClient';
import { BAD_CAPO, LANTERN } from './texts';

const URI = 'file:///lantern.pegbox';
const CONFIGURATION = {
  workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
};

/** The code that BAD_CAPO raises. */
async function badCapoCode(): Promise<string> {
  const client = await TestClient.start();
  const [found] = await client.opened(URI, BAD_CAPO);
  await client.stop();
  assert.ok(found);
  return String(found.code);
}

describe('settings', () => {
  it('hold from the first diagnostics on when the client gives them at the start', async () => {
    const severities = { [await badCapoCode()]: 'off' };
    const client = await TestClient.start({ initializationOptions: { settings: { severities } } });
    assert.deepEqual(await client.opened(URI, BAD_CAPO), []);
    await client.stop();
  });

  it('are asked for at the start and at every change, and open documents follow', async () => {
    const severities = { [await badCapoCode()]: 'hint' };
    const client = await TestClient.start({ capabilities: CONFIGURATION, settings: null });
    assert.equal((await client.opened(URI, BAD_CAPO))[0]?.severity, 1);
    const followed = client.next(URI);
    client.settings = { severities };
    await client.notify('workspace/didChangeConfiguration', { settings: null });
    assert.equal((await followed).diagnostics[0]?.severity, 4);
    assert.deepEqual(client.registered, ['workspace/didChangeConfiguration']);
    await client.stop();
  });

  it('are taken from the news itself by a client that cannot be asked', async () => {
    const code = await badCapoCode();
    const client = await TestClient.start();
    await client.opened(URI, BAD_CAPO);
    const followed = client.next(URI);
    await client.notify('workspace/didChangeConfiguration', {
      settings: { pegbox: { severities: { [code]: 'off' } } },
    });
    assert.deepEqual((await followed).diagnostics, []);
    await client.stop();
  });

  it('give the user tunings that the text may name', async () => {
    const text = LANTERN.replace('DADGAD', 'harbour');
    const plain = await TestClient.start();
    assert.notDeepEqual(await plain.opened(URI, text), []);
    await plain.stop();
    const settings = { tunings: { harbour: 'D2 A2 D3 G3 A3 D4' } };
    const client = await TestClient.start({ initializationOptions: { settings } });
    assert.deepEqual(await client.opened(URI, text), []);
    await client.stop();
  });

  it('of a wrong kind are passed over one by one, each with a sentence, and the rest holds', async () => {
    const code = await badCapoCode();
    const settings = {
      reach: 'far',
      tunings: { harbour: 5 },
      severities: { [code]: 'hint', other: 'loud', __proto__: 'x' },
    };
    const client = await TestClient.start({ initializationOptions: { settings } });
    assert.equal((await client.opened(URI, BAD_CAPO))[0]?.severity, 4);
    assert.deepEqual(
      client.log.map((line) => /pegbox\.\w+/.exec(line)?.[0]),
      ['pegbox.reach', 'pegbox.tunings', 'pegbox.severities'],
    );
    assert.equal(await client.stop(), 0);
  });

  for (const settings of [
    42,
    'x',
    [],
    [1],
    { reach: null },
    { reach: -1 },
    { severities: [] },
    { tunings: 'x' },
  ]) {
    it(`survive ${JSON.stringify(settings)}`, async () => {
      const client = await TestClient.start({ capabilities: CONFIGURATION, settings });
      await client.notify('workspace/didChangeConfiguration', null);
      assert.deepEqual(await client.opened(URI, LANTERN), []);
      assert.equal(await client.stop(), 0);
    });
  }
});
