import assert from 'node:assert/strict';
import type { ShapeKinAnswer, ShapeKinRequest } from '../../../../src/service/shapes/shapesAnswer';
import { service, settings } from '../cursor';

function kin(fields: string, request: ShapeKinRequest): ShapeKinAnswer {
  const document = service.open(`${fields}\n`, settings);
  const answer = service.shapeKin(
    document,
    { line: document.lineCount - 1, character: 0 },
    request,
    settings,
  );
  if ('error' in answer) throw new Error(answer.error);
  return answer;
}

/** Facts of the trade by arithmetic: a string lowered a whole step is stopped two frets higher. */
const TABLE = [
  ['drop D', 'G', '3 2 0 0 0 3', '5 2 0 0 0 3', 'string 6 +2'],
  ['drop D', 'C', 'x 3 2 0 1 0', 'x 3 2 0 1 0', 'nothing changes'],
  ['DADGAD', 'C', 'x 3 2 0 1 0', 'x 3 2 0 3 2', 'string 2 +2, string 1 +2'],
  ['DADGAD', 'Am', 'x 0 2 2 1 0', 'x 0 2 2 3 2', 'string 2 +2, string 1 +2'],
  ['DADGAD', 'D', 'x x 0 2 3 2', 'x x 0 2 5 4', 'string 2 +2, string 1 +2'],
  ['open G', 'Am', 'x 0 2 2 1 0', 'x 2 2 2 1 2', 'string 5 +2, string 1 +2'],
  ['open G', 'D', 'x x 0 2 3 2', 'x x 0 2 3 4', 'string 1 +2'],
  ['half step down', 'G', '3 2 0 0 0 3', '', ''],
] as const;

describe('what became of a shape', () => {
  for (const [tuning, chord, usual, here, words] of TABLE.slice(0, -1)) {
    it(`${chord} in ${tuning}: ${words}`, () => {
      const answer = kin(`tuning: ${tuning}`, { chord });
      assert.deepEqual([answer.usual?.text, answer.here?.text, answer.words], [usual, here, words]);
      assert.equal(answer.stringsChanged, words === 'nothing changes' ? 0 : words.split(', ').length);
      assert.equal(answer.here?.kind, 'full');
    });
  }

  it('each string by itself, with frets in the usual tuning and here', () => {
    const { moves } = kin('tuning: DADGAD', { chord: 'C' });
    assert.deepEqual(
      moves.map(({ string, from, to, changed, words }) => [string, from, to, changed, words]),
      [
        [6, null, null, false, 'stays'],
        [5, 3, 3, false, 'stays'],
        [4, 2, 2, false, 'stays'],
        [3, 0, 0, false, 'stays'],
        [2, 1, 3, true, '+2'],
        [1, 0, 2, true, '+2'],
      ],
    );
  });

  it('a string to mute, one to leave open, one that is not there', () => {
    assert.match(kin('tuning: C G C F C E', { chord: 'C' }).words, /string 2 open/);
    assert.match(kin('tuning: open G', { chord: 'C' }).words, /string 1 mute/);
    const five = kin('tuning: G D G B D', { chord: 'G' });
    assert.equal(five.moves[0]?.words, 'is not there any more');
  });

  it('a shape given by its frets is that of the usual tuning', () => {
    const answer = kin('tuning: DADGAD', { frets: [null, 3, 2, 0, 1, 0] });
    assert.deepEqual([answer.chord, answer.here?.text], ['C', 'x 3 2 0 3 2']);
  });

  it('in the usual tuning it stays, and that is said', () => {
    const { words, remarks } = kin('', { chord: 'C' });
    assert.equal(words, 'nothing changes');
    assert.deepEqual(remarks, ['This is the usual tuning, so the shape stays as it is.']);
  });

  it('under a bar the best place for it stands beside the fingers of the usual tuning', () => {
    const { usual, here } = kin('tuning: open E\nfretting: slide', { chord: 'A' });
    assert.deepEqual([usual?.text, here?.text], ['x 0 2 2 2 0', '5 5 5 5 5 5']);
  });

  it('frets that do not fit, and a hand that cannot: one sentence', () => {
    const ask = (frets: readonly (number | null)[]): string => {
      const document = service.open('tuning: DADGAD\n', settings);
      const answer = service.shapeKin(document, { line: 1, character: 0 }, { frets }, settings);
      return 'error' in answer ? answer.error : 'no error';
    };
    assert.match(ask([3, 3]), /2 frets are given for 6 strings/);
    assert.match(ask([1, 9, 3, 4, 5, 6]), /^No hand can hold this shape: /);
    assert.match(ask([null, null, null, null, null, null]), /give at least one fret/);
    assert.match(ask([99, 0, 0, 0, 0, 0]), /String 6 has no fret 99/);
  });
});

const SONG = `tuning: DADGAD

[Verse]
chords |C       |Am  G   |
D4     |0-------|0-------|
A3     |--------|--------|
G3     |--------|--------|
D3     |--------|--------|
A2     |--------|--------|
D2     |--------|--------|

[Chorus]
chords |C   Hx  |N.C.    |
D4     |0-------|0-------|
A3     |--------|--------|
G3     |--------|--------|
D3     |--------|--------|
A2     |--------|--------|
D2     |--------|--------|
`;

describe('every chord of a song', () => {
  it('each once, with its bars, from the names over the tab', () => {
    const answer = service.songShapes(service.open(SONG, settings), undefined, settings);
    if ('error' in answer) throw new Error(answer.error);
    assert.equal(answer.from, 'row');
    assert.deepEqual(
      answer.chords.map(({ chord, bars, line, column, kin: one }) => [chord, bars, line, column, one?.words]),
      [
        ['C', [1, 3], 4, 9, 'string 2 +2, string 1 +2'],
        ['Am', [2], 4, 18, 'string 2 +2, string 1 +2'],
        ['G', [2], 4, 22, answer.chords[2]?.kin?.words],
        ['Hx', [3], 13, 13, undefined],
      ],
    );
    assert.match(answer.chords[3]?.problem ?? '', /H is B here/);
  });

  it('in the lines asked for', () => {
    const range = { start: { line: 11, character: 0 }, end: { line: 13, character: 0 } };
    const answer = service.songShapes(service.open(SONG, settings), range, settings);
    if ('error' in answer) throw new Error(answer.error);
    assert.deepEqual(
      answer.chords.map(({ chord }) => chord),
      ['C', 'Hx'],
    );
  });

  it('without names from what is struck together', () => {
    const tab = `E4 |0---0---|\nB3 |1---0---|\nG3 |0---0---|\nD3 |2---0---|\nA2 |3---2---|\nE2 |----3---|\n`;
    const answer = service.songShapes(service.open(tab, settings), undefined, settings);
    if ('error' in answer) throw new Error(answer.error);
    assert.equal(answer.from, 'tab');
    assert.deepEqual(
      answer.chords.map(({ chord }) => chord),
      ['C', 'G6'],
    );
    assert.equal(answer.remarks.length, 1);
  });

  it('a text without chords is told', () => {
    const answer = service.songShapes(service.open('E4 |0---|\n', settings), undefined, settings);
    assert.ok('error' in answer);
  });
});
