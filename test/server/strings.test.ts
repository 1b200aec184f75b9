import assert from 'node:assert/strict';
import type { StringsAnswer } from '../../src/service/strings/stringsAnswer';
import { TestClient } from './testClient';

const URI = 'file:///strings.pegbox';
const TEXT = 'tuning: standard up 3\n\nE4 |0---|\n\ntuning: drop D\n\nE4 |0---|\n';

interface Refused {
  readonly error: string;
}

describe('what the strings bear', () => {
  it('is answered for a place of an open document; one sentence where it is not open', async () => {
    const client = await TestClient.start();
    await client.opened(URI, TEXT);
    const ask = (uri: string, line: number): Promise<StringsAnswer | Refused> =>
      client.request('pegbox/strings', { uri, position: { line, character: 0 } });
    const above = await ask(URI, 2);
    assert.ok('strings' in above);
    assert.equal(above.strings.at(-1)?.state, 'warning');
    const below = await ask(URI, 6);
    assert.ok('strings' in below);
    // strings-and-frets.md P8: two half steps down are .794 of the tension
    assert.ok(Math.abs((below.strings[0]?.change?.ratio ?? 0) - 0.794) < 5e-4);
    const past = await ask(URI, 99);
    assert.ok('strings' in past);
    const closed = await ask('file:///unknown.pegbox', 0);
    assert.ok('error' in closed);
    assert.equal(await client.stop(), 0);
  });

  it('is told by limits that the client sets; what is no share is passed over with a sentence', async () => {
    const codes = async (strain: unknown): Promise<{ codes: unknown[]; log: readonly string[] }> => {
      const client = await TestClient.start({ initializationOptions: { settings: { strain } } });
      const found = await client.opened(URI, 'tuning: standard up 3\n');
      assert.equal(await client.stop(), 0);
      return {
        codes: found.map(({ code, severity }) => `${severity ?? 0} ${String(code)}`),
        log: client.log,
      };
    };
    assert.deepEqual((await codes({})).codes, ['2 string-near-breaking']);
    assert.deepEqual((await codes({ warning: 0.8 })).codes, ['3 string-near-breaking']);
    assert.deepEqual((await codes({ warning: 0.9, information: 0.9 })).codes, ['3 tuning-raises-strings']);
    const wrong = await codes({ warning: 70, information: 'high', slack: -1 });
    assert.deepEqual(wrong.codes, ['2 string-near-breaking']);
    assert.equal(wrong.log.filter((line) => line.includes('pegbox.strain')).length, 3);
    assert.equal((await codes('much')).log.length, 1);
  });
});
