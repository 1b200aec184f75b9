import assert from 'node:assert/strict';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ChangeAnswer, MadeChange } from '../../src/server/requests';
import { TestClient } from './testClient';
import { LANTERN } from './texts';

const URI = 'file:///lantern.pegbox';

describe('requests of the column tools', () => {
  let client: TestClient;
  before(async () => {
    client = await TestClient.start();
    await client.opened(URI, LANTERN);
  });
  after(async () => {
    assert.equal(await client.stop(), 0);
    assert.deepEqual(client.log, []);
  });

  const at = (line: number, character: number): object => {
    const place = { line, character };
    return { start: place, end: place };
  };

  const ask = (params: object): Promise<ChangeAnswer> =>
    client.request<ChangeAnswer>('pegbox/columns', { uri: URI, range: at(5, 4), ...params });

  async function made(params: object): Promise<MadeChange & { readonly line: string }> {
    const answer = await ask(params);
    assert.ok(!('error' in answer), JSON.stringify(answer));
    assert.equal(answer.edits.length, 1);
    const text = TextDocument.applyEdits(TextDocument.create(URI, 'pegbox', 1, LANTERN), [...answer.edits]);
    return { ...answer, line: text.split('\n')[5] ?? '' };
  }

  async function refused(params: object): Promise<string> {
    const answer = await ask(params);
    assert.ok('error' in answer, 'it was done');
    return answer.error;
  }

  it('double a bar, and say where one writes on', async () => {
    const { line, goesOn } = await made({ action: 'duplicateBars' });
    assert.equal(line, 'D4 |0-------0-------|0-------0-------|');
    assert.deepEqual(goesOn, { line: 5, character: 21 });
  });

  it('shift the notes of several selections, and select them again', async () => {
    const { line, selects, report } = await made({
      action: 'shiftLater',
      step: 'beat',
      ranges: [at(10, 4)],
    });
    assert.equal(line, 'D4 |----0---0-------|');
    assert.equal(report.moved, 2);
    assert.deepEqual(selects, [
      { start: { line: 5, character: 8 }, end: { line: 5, character: 9 } },
      { start: { line: 10, character: 8 }, end: { line: 10, character: 9 } },
    ]);
  });

  it('say in one sentence what cannot be done', async () => {
    assert.match(await refused({ action: 'removeBars' }), /^Bar 1 has 6 notes: clear it first/);
    assert.match(await refused({ action: 'insertBeat', range: at(0, 2) }), /^There are no bars here/);
    assert.match(await refused({ action: 'pasteOver', text: 'Dear Fenna,' }), /^The clipboard holds no bars/);
    assert.match(await refused({ action: 'fitWidth', width: 3 }), /^A width of 20 columns or more/);
  });

  it('say in one sentence what a client sent wrongly', async () => {
    assert.match(await refused({}), /parameter action was expected as one of insertColumn/);
    assert.match(await refused({ action: 'insertBar', range: undefined }), /parameter range was expected/);
    assert.match(
      await refused({ action: 'shiftLater', ranges: [{ start: 4 }] }),
      /parameter ranges was expected as a list of ranges/,
    );
    assert.match(
      await refused({ action: 'shiftLater', overBar: 'jump' }),
      /parameter overBar was expected as one of push, refuse/,
    );
    assert.match(await refused({ uri: 'file:///gone.pegbox', action: 'insertBar' }), /not open/);
  });
});
