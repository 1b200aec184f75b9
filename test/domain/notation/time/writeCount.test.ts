import assert from 'node:assert/strict';
import { fraction, subtract } from '../../../../src/music/fraction';
import { readTimes } from '../../../../src/notation/time/timeInput';
import { writeCount } from '../../../../src/notation/time/writeCount';
import { sketch } from './sketch';

/** Line → the count row that says its inferred times. */
const ROWS: readonly (readonly [meter: string, line: string, row: string])[] = [
  ['4/4', '|0---2---3---5---|', '|1   2   3   4   |'],
  ['4/4', '|0-----2---------|', '|1 & 2 & 3 & 4 & |'],
  ['4/4', '|-8--10--12--10--|', '| 1  2   3   4   |'],
  // The onset between e and & has no syllable, and lies evenly between them.
  ['4/4', '|0-xxx---5-------5---------------|', '|1 e &   2   &   3   &   4   &   |'],
  ['4/4', '|0-0-|0-0-0-0-0-0-0-0-|', '|4 & |1 & 2 & 3 & 4 & |'],
  ['4/4', '|0--0--0--0--|xxx---xxx---|', '|1  2  3  4  |1tl   3tl   |'],
  ['6/8', '|0-0-0-0-0-0-|0-----0-----|', '|1 & a 2 & a |1 & a 2 & a |'],
  ['6/8', '|0-|0-0-0-0-0-0-|', '|a |1 & a 2 & a |'],
  ['7/8', '|0-0-0-0-0-0-0-|', '|1 2 3 4 5 6 7 |'],
  ['5/4', '|0-xx|', '|13& |'],
];

function rowOf(meter: string, line: string): string | undefined {
  const input = sketch(meter, line, { firstInPart: true });
  const reading = readTimes(input);
  const bars = reading.bars.map((bar, i) => ({ ...bar, ...(input.bars[i] ?? { start: 0, end: 0 }) }));
  const onsets = input.onsets.map((column, i) => {
    const bar = input.bars.findIndex(({ end }) => column < end);
    const time = subtract(
      reading.columnTimes[column] ?? fraction(0),
      reading.bars[bar]?.onset ?? fraction(0),
    );
    return { column, time, bar, end: input.onsetEnds[i] ?? column };
  });
  return writeCount(input.meter, bars, onsets);
}

describe('a written count', () => {
  for (const [meter, line, row] of ROWS) {
    it(`${meter} ${line}`, () => assert.equal(rowOf(meter, line), row));
  }

  const meter = { upper: 4, lower: 4 };
  const bar = { start: 1, end: 17, onset: fraction(0), length: fraction(4), pickup: false };

  it('is none where a time has no syllable and lies evenly between none', () => {
    assert.equal(writeCount(meter, [bar], [{ column: 3, time: fraction(1, 5), bar: 0 }]), undefined);
  });

  it('is none where a number has no room before its part', () => {
    const onsets = [
      { column: 5, time: fraction(1), bar: 0 },
      { column: 6, time: fraction(5, 2), bar: 0 },
    ];
    assert.equal(writeCount(meter, [bar], onsets), undefined);
  });

  it('is none for a pickup that is not the first bar', () => {
    const pickup = { start: 18, end: 22, onset: fraction(4), length: fraction(1), pickup: true };
    assert.equal(writeCount(meter, [bar, pickup], []), undefined);
  });

  it('puts no syllable where it might stand over a note without one', () => {
    // The second onset, 3/8, has no syllable; where its end is not known nothing is written after it.
    const onsets = [
      { column: 3, time: fraction(1, 4), bar: 0 },
      { column: 4, time: fraction(3, 8), bar: 0 },
      { column: 5, time: fraction(1, 2), bar: 0 },
    ];
    const wide = { ...bar, end: 33 };
    assert.equal(writeCount(meter, [wide], onsets), '|1 e &   2   &   3   &   4   &   |');
    const last = [{ column: 4, time: fraction(3, 8), bar: 0 }];
    assert.equal(writeCount(meter, [wide], last), '|1                               |');
  });
});
