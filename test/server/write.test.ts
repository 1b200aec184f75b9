import assert from 'node:assert/strict';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ChangeAnswer, MadeChange } from '../../src/server/requests';
import type { ServiceError } from '../../src/service/serviceApi';
import { TestClient } from './testClient';
import { LANTERN } from './texts';

const URI = 'file:///lantern.pegbox';

describe('requests that write by names', () => {
  let client: TestClient;
  before(async () => {
    client = await TestClient.start();
    await client.opened(URI, LANTERN);
  });
  after(async () => {
    assert.equal(await client.stop(), 0);
    assert.deepEqual(client.log, []);
  });

  const ask = (method: string, params: object): Promise<ChangeAnswer> =>
    client.request<ChangeAnswer>(method, {
      uri: URI,
      position: { line: LANTERN.split('\n').length - 1, character: 0 },
      ...params,
    });

  async function made(method: string, params: object): Promise<MadeChange> {
    const answer = await ask(method, params);
    assert.ok(!('error' in answer), JSON.stringify(answer));
    return answer;
  }

  const refused = async (method: string, params: object): Promise<ServiceError> => {
    const answer = await ask(method, params);
    assert.ok('error' in answer, 'it was written');
    return answer;
  };

  /** The text after the change, which must be free of mistakes. */
  async function textAfter({ edits }: MadeChange): Promise<string> {
    const text = TextDocument.applyEdits(TextDocument.create(URI, 'pegbox', 1, LANTERN), [...edits]);
    assert.deepEqual(await client.opened('file:///after.pegbox', text), [], text);
    return text;
  }

  it('notes: one edit, the report, and where a player writes on', async () => {
    const change = await made('pegbox/writeNotes', { text: 'D3 E3 F#3', value: 'quarter' });
    assert.equal(change.edits.length, 1);
    assert.deepEqual(change.report.remarks.length > 0 && change.report.kept, 3);
    const text = await textAfter(change);
    assert.ok(change.goesOn);
    assert.match(text.split('\n')[change.goesOn.line] ?? '', /^D3 .*0-+2-+4/);
  });

  it('notes: degrees of the key in force', async () => {
    const { report } = await made('pegbox/writeNotes', { text: '1 2 3' });
    assert.match(report.remarks[0] ?? '', /D3 E3 F#3/);
  });

  it('exercise: a heading, fingers, bars', async () => {
    const change = await made('pegbox/writeExercise', { scale: 'D dorian', inPosition: 5, direction: 'up' });
    assert.match(await textAfter(change), /^D dorian, position 5, up\nfingers +\|/m);
  });

  it('say in one sentence what a client sent wrongly', async () => {
    assert.match((await refused('pegbox/writeNotes', {})).error, /Type some notes/);
    assert.match(
      (await refused('pegbox/writeNotes', { text: 5 })).error,
      /parameter text was expected as text/,
    );
    assert.match(
      (await refused('pegbox/writeNotes', { text: 'D3', inTheWay: 'over' })).error,
      /parameter inTheWay was expected as one of new bars/,
    );
    assert.match(
      (await refused('pegbox/writeExercise', { scale: 'D dorian', inPosition: 'low' })).error,
      /parameter inPosition was expected as a number or open/,
    );
    assert.match((await refused('pegbox/writeExercise', {})).error, /one scale, such as D dorian/);
    assert.match(
      (await refused('pegbox/writeNotes', { uri: 'file:///gone.pegbox', text: 'D3' })).error,
      /not open/,
    );
  });
});
