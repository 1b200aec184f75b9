import { expect } from 'chai';
import { Document } from '../../../../src/notation/document';
import { moveOnStaff, type Move } from '../../../../src/service/typing/moves';
import { shiftNote, type Shift } from '../../../../src/service/typing/shiftNote';
import { readCursors } from './keys';

const TWO = `E4 |0---12--5h7-----|--------3-------|
B3 |----------------|----------------|

E4 |----1-----------|
B3 |----------------|`;

/** The text with the cursor put after so many characters of a line. */
function moved(marked: string, move: Move): string | undefined {
  const { text, cursors } = readCursors(marked);
  const to = cursors[0] && moveOnStaff(new Document(text), cursors[0].active, move);
  return to && `${to.line}:${to.character}`;
}

const at = (line: number, character: number): string => {
  const lines = TWO.split('\n');
  lines[line] = `${lines[line]?.slice(0, character) ?? ''}<|>${lines[line]?.slice(character) ?? ''}`;
  return lines.join('\n');
};

describe('moves on the staff', () => {
  for (const [move, from, to] of [
    ['nextCell', [0, 4], '0:8'],
    ['nextCell', [0, 8], '0:12'],
    ['nextCell', [0, 12], '0:29'],
    ['nextCell', [0, 29], '3:8'],
    ['previousCell', [3, 8], '0:29'],
    ['previousCell', [0, 4], undefined],
    ['nextBeat', [0, 4], '0:8'],
    ['previousBeat', [0, 10], '0:8'],
    ['nextBar', [0, 6], '0:21'],
    ['nextBar', [0, 22], '3:4'],
    ['previousBar', [3, 4], '0:21'],
    ['nextString', [0, 9], '1:9'],
    ['nextString', [1, 9], '3:9'],
    ['previousString', [3, 9], '1:9'],
    ['previousString', [0, 9], undefined],
  ] as const) {
    it(`${move} from ${from.join(':')}`, () => {
      expect(moved(at(from[0], from[1]), move)).to.equal(to);
    });
  }

  it('nothing on prose', () => {
    expect(moved('Ver<|>se', 'nextBar')).to.equal(undefined);
  });
});

/** Standard tuning: E4 B3 G3 D3 A2 E2, from string 1 on (common practice, no source). */
const SIX = [
  'E4 |5-------|',
  'B3 |0-------|',
  'G3 |--------|',
  'D3 |--------|',
  'A2 |--------|',
  'E2 |--------|',
];

function shifted(line: number, shift: Shift, lines: readonly string[] = SIX): string {
  const document = new Document(lines.join('\n'));
  const change = shiftNote(document, { line, character: 4 }, shift);
  if ('error' in change) return change.error;
  document.edit([...change.edits].reverse());
  return document.text();
}

const six = (...given: string[]): string => SIX.map((line, i) => given[i] ?? line).join('\n');

describe('a note taken elsewhere', () => {
  it('keeps its sound on the string below', () => {
    const alone = ['E4 |5-------|', 'B3 |--------|', ...SIX.slice(2)];
    // A4 is fret 5 above E4 and fret 10 above B3.
    expect(shifted(0, 'string below', alone)).to.match(/^E4 \|-+\|\nB3 \|10/);
  });

  it('goes an octave up on its own string, twelve frets', () => {
    expect(shifted(0, 'octave up')).to.match(/^E4 \|17/);
  });

  it('goes an octave down on another string', () => {
    // A3 is fret 2 above G3.
    expect(shifted(0, 'octave down')).to.equal(six('E4 |--------|', 'B3 |0-------|', 'G3 |2-------|'));
  });

  it('does not go where another note begins', () => {
    expect(shifted(0, 'string below')).to.equal('Another note begins on string 2 at the same time.');
  });

  it('does not go where there is no string, or no fret', () => {
    expect(shifted(0, 'string above')).to.equal('There is no string above this one here.');
    expect(shifted(1, 'string above', ['E4 |--------|', ...SIX.slice(1)])).to.equal(
      'String 1 does not have this note on its neck.',
    );
  });
});
