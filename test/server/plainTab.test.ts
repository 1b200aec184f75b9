import assert from 'node:assert/strict';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ImportAnswer } from '../../src/formats/plainTab/importAnswer';
import type { PasteTabAnswer, PlainTextAnswer } from '../../src/server/requests';
import type { ServiceError } from '../../src/service/serviceApi';
import { range, TestClient } from './testClient';

// Our own texts.

const URI = 'file:///pasted.pegbox';
const SONG = 'tuning: DADGAD\n\nD4 |0---|\nA3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nD2 |0---|\n\n';
const BARE = '--0--\n-----\n-----\n-----\n-----\n--3--';
const MAIL = `Hello,\n\ndrop D, capo 2:\n\n${['e', 'B', 'G', 'D', 'A', 'D'].map((label) => `${label}|-5b7-|`).join('\n')}`;
const END = range(9, 0, 9, 0);

/** Oracle for what edits mean: vscode-languageserver-textdocument, the protocol authors' own document. */
function applied({ edits }: PasteTabAnswer): string {
  return TextDocument.applyEdits(TextDocument.create(URI, 'pegbox', 1, SONG), [...edits]);
}

describe('plain tab over the wire', () => {
  let client: TestClient;
  const ask = async <Answer extends object>(name: string, params: object): Promise<Answer> => {
    const answer = await client.request<Answer | ServiceError>(`pegbox/${name}`, params);
    assert.ok(!('error' in answer), JSON.stringify(answer));
    return answer;
  };

  before(async () => {
    client = await TestClient.start();
    await client.opened(URI, SONG);
  });
  after(async () => {
    assert.equal(await client.stop(), 0);
    assert.deepEqual(client.log, []);
  });

  it('is read as a tab of its own, with its fields, and what was guessed', async () => {
    const answer = await ask<ImportAnswer>('importTab', { text: MAIL });
    assert.equal(answer.systems, 1);
    assert.deepEqual(answer.fields, ['tuning: drop D', 'capo:   2']);
    assert.match(answer.text, /^tuning: drop D\ncapo: {3}2\n\nHello,\n\ndrop D, capo 2:\n\ne\|-5b7-\|\n/);
    assert.deepEqual(
      answer.guesses.map(({ kind, line }) => [kind, line]),
      [
        ['tuning', 4],
        ['capo', 4],
      ],
    );
    assert.deepEqual(answer.kept, [0, 1, 2, 3]);
  });

  it('is read for the tuning that the caller gives', async () => {
    const answer = await ask<ImportAnswer>('importTab', { text: BARE, tuning: 'open G' });
    assert.deepEqual(answer.fields, ['tuning: open G']);
  });

  it('is pasted in the tuning in force, for a version of the text', async () => {
    const answer = await ask<PasteTabAnswer>('pasteTab', { uri: URI, range: END, text: BARE });
    assert.deepEqual([answer.version, answer.systems, answer.notes], [1, 1, 2]);
    assert.match(answer.guesses[0]?.words ?? '', /strings of guitar in DADGAD, which is in force there/);
    assert.equal(applied(answer), `${SONG}D|--0--|\nA|-----|\nG|-----|\nD|-----|\nA|-----|\nD|--3--|\n`);
  });

  it('that is no tab is put there as it is', async () => {
    const answer = await ask<PasteTabAnswer>('pasteTab', { uri: URI, range: END, text: 'No tab\r\n at all' });
    assert.equal(answer.systems, 0);
    assert.equal(applied(answer), `${SONG}No tab\r\n at all`);
  });

  it('is written with the tuning on top, whole or for a range', async () => {
    const whole = await ask<PlainTextAnswer>('plainText', { uri: URI });
    assert.equal(whole.systems, 1);
    assert.match(whole.text, /^Tuning, low to high: D A D G A D \(DADGAD\)\n\nd\|0---\|\nA\|----\|\n/);
    const none = await ask<PlainTextAnswer>('plainText', { uri: URI, range: range(0, 0, 0, 3) });
    assert.equal(none.systems, 0);
  });

  it('what is wrong with a request is said in one sentence', async () => {
    const cases: readonly (readonly [string, object, RegExp])[] = [
      ['importTab', {}, /^The parameter text was expected as text\.$/],
      ['importTab', { text: 7 }, /^The parameter text was expected as text\.$/],
      ['importTab', { text: BARE, tuning: [] }, /^The parameter tuning was expected as text\.$/],
      ['pasteTab', { uri: 'file:///none.pegbox', range: END, text: BARE }, /not open/],
      ['pasteTab', { uri: URI, range: END }, /^The parameter text was expected as text\.$/],
      [
        'pasteTab',
        { uri: URI, range: END, text: '-'.repeat(2_000_001) },
        /2 million characters.*in parts\.$/,
      ],
      ['plainText', { uri: 'file:///none.pegbox' }, /not open/],
    ];
    for (const [name, params, expected] of cases) {
      const answer = await client.request<object>(`pegbox/${name}`, params);
      assert.ok('error' in answer && typeof answer.error === 'string', name);
      assert.match(answer.error, expected);
    }
  });
});
