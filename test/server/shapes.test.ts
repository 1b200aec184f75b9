import assert from 'node:assert/strict';
import type { CompletionItem } from 'vscode-languageserver/node';
import type { ChangeAnswer } from '../../src/server/requests';
import type { ServiceError } from '../../src/service/serviceApi';
import type { ShapeKinAnswer, ShapesAnswer, SongShapesAnswer } from '../../src/service/shapes/shapesAnswer';
import { TestClient } from './testClient';

const uri = 'file:///shapes.pegbox';
const TEXT = `tuning: DADGAD

chords |C       |
D4     |--------|
A3     |--------|
G3     |--------|
D3     |--------|
A2     |--------|
D2     |--------|
`;
const position = { line: 2, character: 8 };

describe('shapes over the wire', () => {
  let client: TestClient;
  before(async () => {
    client = await TestClient.start();
    await client.opened(uri, TEXT);
  });
  after(async () => assert.equal(await client.stop(), 0));

  const ask = <Answer>(name: string, more: object): Promise<Answer> =>
    client.request(name, { uri, position, ...more });

  it('of a chord', async () => {
    const answer = await ask<ShapesAnswer>('pegbox/shapes', { chord: 'C', limit: 3 });
    assert.equal(answer.shapes.length, 3);
    const wrong = await ask<ServiceError>('pegbox/shapes', { chord: 7 });
    assert.equal(wrong.error, 'The parameter chord was expected as text.');
    assert.match((await ask<ServiceError>('pegbox/shapes', {})).error, /No chord is given/);
  });

  it('beside those of the usual tuning, for a chord, for frets and for the piece', async () => {
    const words = 'string 2 +2, string 1 +2';
    assert.equal((await ask<ShapeKinAnswer>('pegbox/shapeKin', { chord: 'C' })).words, words);
    const frets = [null, 3, 2, 0, 1, 0];
    assert.equal((await ask<ShapeKinAnswer>('pegbox/shapeKin', { frets })).words, words);
    const wrong = await ask<ServiceError>('pegbox/shapeKin', { frets: [1.5] });
    assert.match(wrong.error, /^The parameter frets was expected as a list of whole numbers/);
    const song = await client.request<SongShapesAnswer>('pegbox/songShapes', { uri });
    assert.deepEqual(
      song.chords.map(({ chord }) => chord),
      ['C'],
    );
  });

  it('written at the cursor, for the version asked about', async () => {
    const answer = await client.request<ChangeAnswer>('pegbox/insertShape', {
      uri,
      position: { line: 4, character: 10 },
      frets: [null, 3, 2, 0, 3, 2],
    });
    assert.ok('edits' in answer);
    assert.equal(answer.edits.length, 1);
    assert.match(answer.edits[0]?.newText ?? '', /^D4 {5}\|--2-----\|\nA3 {5}\|--3-----\|/);
    assert.match(
      (await ask<ServiceError>('pegbox/insertShape', {})).error,
      /^The parameter frets was expected/,
    );
    assert.match(
      (await ask<ServiceError>('pegbox/insertShape', { frets: [1] })).error,
      /1 fret is given for 6/,
    );
  });

  it('offered at the name, with what they write into the strings', async () => {
    const params = { textDocument: { uri }, position: { line: 2, character: 9 } };
    const items = await client.request<CompletionItem[]>('textDocument/completion', params);
    const [first] = items;
    assert.ok(first && first.label.startsWith('C '));
    assert.ok(first.additionalTextEdits && first.additionalTextEdits.length >= 3);
    assert.ok(first.textEdit && 'range' in first.textEdit && first.textEdit.range.start.line === 2);
  });

  it('of a document that is not open: a sentence', async () => {
    const answer = await client.request<ServiceError>('pegbox/shapes', {
      uri: 'file:///no.pegbox',
      position,
      chord: 'C',
    });
    assert.match(answer.error, /not open/);
  });
});
