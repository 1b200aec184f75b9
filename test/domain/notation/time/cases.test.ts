import assert from 'node:assert/strict';
import { readTimes } from '../../../../src/notation/time/timeInput';
import { barTimes, onsetTimes, sketch } from './sketch';

/** Rows 50–56 and 58 of the table of sixty readings; row 57 is about cells, of which only the columns come here. */
const INFERRED: readonly (readonly [
  row: string,
  meter: string,
  lines: string | readonly string[],
  onsets: string,
])[] = [
  ['50', '4/4', '|--x---x---x---x-|', '1/2 3/2 5/2 7/2'],
  ['51', '4/4', '|-0---0---0---0---|', '0 1 2 3'],
  ['51, two dashes in front', '4/4', '|--0---0---0---0---|', '0 1 2 3'],
  ['52', '4/4', '|-8--10--12--10--|', '0 1 2 3'],
  ['52, from the sign', '4/4', '|8---10--12--10--|', '0 1 2 3'],
  ['53', '4/4', '|-0--2--3--5-|', '0 1 2 3'],
  ['57, two onsets', '4/4', ['|11--------------|', '|-12-------------|'], '0 1/4'],
  ['58', '4/4', ['|:0---|', '|-0---|'], '0'],
];

describe('sixty readings: time', () => {
  for (const [row, meter, lines, onsets] of INFERRED) {
    it(`row ${row}: ${String(lines)}`, () => {
      const input = sketch(meter, lines);
      const reading = readTimes(input);
      assert.equal(onsetTimes(input, reading), onsets);
      assert.equal(reading.timing, 'inferred');
      assert.equal(reading.exact, true);
    });
  }

  it('row 54: a dotted count of 6/8', () => {
    const input = sketch('6/8', '|0-0-0-0-0-0-|', { count: '|1 & a 2 & a |' });
    assert.equal(onsetTimes(input), '0 1/2 1 3/2 2 5/2');
    assert.equal(readTimes(input).timing, 'counted');
  });

  it('row 55: a count that begins late', () => {
    const input = sketch('4/4', '|0-0-|0-0-0-0-0-0-0-0-|', {
      count: '|4 & |1 & 2 & 3 & 4 & |',
      firstInPart: true,
    });
    const reading = readTimes(input);
    assert.equal(barTimes(reading), '0+1p 1+4');
    assert.equal(onsetTimes(input, reading), '0 1/2 1 3/2 2 5/2 3 7/2 4 9/2');
    assert.deepEqual(reading.problems, []);
  });

  it('row 56: touching numbers of 12/8', () => {
    const input = sketch('12/8', '|0-0-0-0-0-0-0-0-0-0-0-0-|', { count: '|1 2 3 4 5 6 7 8 9 101112|' });
    assert.equal(onsetTimes(input), '0 1/2 1 3/2 2 5/2 3 7/2 4 9/2 5 11/2');
    assert.deepEqual(readTimes(input).problems, []);
  });
});
