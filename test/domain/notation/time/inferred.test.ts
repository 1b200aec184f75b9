import assert from 'node:assert/strict';
import { readTimes } from '../../../../src/notation/time/timeInput';
import { barTimes, onsetTimes, sketch } from './sketch';

/** Section 7 of the notation, rule by rule; times in quarter notes from the system's start. */
interface Row {
  readonly rule: string;
  readonly meter: string;
  readonly lines: string | readonly string[];
  readonly onsets: string;
  /** False for bars that snap. */
  readonly exact?: boolean;
  readonly bars?: string;
  readonly first?: boolean;
}

const ROWS: readonly Row[] = [
  { rule: 'one column a beat', meter: '4/4', lines: '|xxxx|', onsets: '0 1 2 3' },
  { rule: 'two columns a beat', meter: '3/4', lines: '|0-2x-5|', onsets: '0 1 3/2 5/2' },
  { rule: 'three columns a beat', meter: '4/4', lines: '|0--2xx-0-0--|', onsets: '0 1 4/3 5/3 7/3 3' },
  { rule: 'nine columns a beat', meter: '2/4', lines: '|0--2--3--0--------|', onsets: '0 1/3 2/3 1' },
  {
    rule: 'sixteen columns a beat',
    meter: '2/4',
    lines: '|0---0---0---0---0---------------|',
    onsets: '0 1/4 1/2 3/4 1',
  },
  {
    rule: 'five columns a beat are not even, and snap',
    meter: '2/4',
    lines: '|0-2--3----|',
    onsets: '0 1/3 1',
    exact: false,
  },
  {
    rule: 'every bar has its own columns a beat',
    meter: '4/4',
    lines: '|0-2-3-5-|0---2---3---5---|',
    onsets: '0 1 2 3 4 5 6 7',
  },

  {
    rule: 'beats of 5/4 are five quarters',
    meter: '5/4',
    lines: '|0---2---3---5---7---|',
    onsets: '0 1 2 3 4',
  },
  {
    rule: 'beats of 7/8 are seven eighths',
    meter: '7/8',
    lines: '|0-2-3-5-7-5-3-|',
    onsets: '0 1/2 1 3/2 2 5/2 3',
  },
  { rule: 'beats of 2/2 are two halves', meter: '2/2', lines: '|0---2---3---5---|', onsets: '0 1 2 3' },
  { rule: 'beats of 3/8 are three eighths', meter: '3/8', lines: '|0-2-3-|', onsets: '0 1/2 1' },
  { rule: 'beats of 6/8 are two dotted quarters', meter: '6/8', lines: '|0--2-3|', onsets: '0 3/2 5/2' },
  { rule: 'beats of 12/8 are four dotted quarters', meter: '12/8', lines: '|xxxx|', onsets: '0 3/2 3 9/2' },
  {
    rule: 'beats of 9/16 are three dotted eighths',
    meter: '9/16',
    lines: '|0--2--3-5|',
    onsets: '0 3/4 3/2 2',
  },

  { rule: 'one padding column', meter: '4/4', lines: '|-0-2-3-5-|-5-3-2-0-|', onsets: '0 1 2 3 4 5 6 7' },
  { rule: 'two padding columns', meter: '3/4', lines: '|--0---2---3---|', onsets: '0 1 2' },
  {
    rule: 'padding that would swallow a note is none',
    meter: '4/4',
    lines: '|-0-2-3-5-|0-5-3-2-0|',
    onsets: '1/2 4/3 9/4 3 4 5 23/4 20/3 15/2',
    exact: false,
  },
  {
    rule: 'most even bars win over plain places',
    meter: '4/4',
    lines: '|--0---2---3---5-|----------------|',
    onsets: '1/2 3/2 5/2 7/2',
  },
  {
    rule: 'second digits carry no time where that is even',
    meter: '4/4',
    lines: '|10-12-0-0-|',
    onsets: '0 1 2 3',
  },
  {
    rule: 'second digits carry time where another string plays',
    meter: '4/4',
    lines: ['|10------|', '|-3--5---|'],
    onsets: '0 1/2 2',
  },
  {
    rule: 'the plainest places of two even readings',
    meter: '4/4',
    lines: '|-0-0-0-0-0-0-0-0|',
    onsets: '0 1/2 1 3/2 2 5/2 3 7/2',
  },
  {
    rule: 'nothing missing where a missing end costs as much',
    meter: '4/4',
    lines: '|--x-----x-------|',
    onsets: '1/2 2',
  },
  {
    rule: 'one column missing at the end',
    meter: '3/4',
    lines: '|-0---2---3--|-3---2---0--|',
    onsets: '0 1 2 3 4 5',
  },
  { rule: 'three columns missing at the end', meter: '3/4', lines: '|-0---2---3|', onsets: '0 1 2' },
  {
    rule: 'no column is missing without padding',
    meter: '3/4',
    lines: '|0---2---3--|',
    onsets: '0 1 9/4',
    exact: false,
  },

  {
    rule: 'a pickup of one beat',
    meter: '4/4',
    lines: '|5---|0---2---3---5---|',
    onsets: '0 1 2 3 4',
    bars: '0+1p 1+4',
    first: true,
  },
  {
    rule: 'a pickup of half a beat',
    meter: '4/4',
    lines: '|5-|0---2---3---5---|',
    onsets: '0 1/2 3/2 5/2 7/2',
    bars: '0+1/2p 1/2+4',
    first: true,
  },
  {
    rule: 'a pickup of three quarters of the next bar',
    meter: '4/4',
    lines: '|5--7--0--|0--2--3--5--|',
    onsets: '0 1 2 3 4 5 6',
    bars: '0+3p 3+4',
    first: true,
  },
  {
    rule: 'a padded pickup',
    meter: '4/4',
    lines: '|-5---|-0---2---3---5---|',
    onsets: '0 1 2 3 4',
    bars: '0+1p 1+4',
    first: true,
  },
  {
    rule: 'more than three quarters is no pickup',
    meter: '4/4',
    lines: '|5------3------|0---2---3---5---|',
    onsets: '0 2 4 5 6 7',
    bars: '0+4 4+4',
    first: true,
    exact: false,
  },
  {
    rule: 'a quarter of a beat is no pickup',
    meter: '4/4',
    lines: '|5|0---2---3---5---|',
    onsets: '0 4 5 6 7',
    bars: '0+4 4+4',
    first: true,
    exact: false,
  },
  {
    rule: 'a pickup of an eighth before 6/8',
    meter: '6/8',
    lines: '|5-|0-----2-----|',
    onsets: '0 1/2 2',
    bars: '0+1/2p 1/2+3',
    first: true,
  },
  {
    rule: 'a pickup before a bar that snaps',
    meter: '2/4',
    lines: '|0----|0----5---5|',
    onsets: '0 1 2 11/4',
    bars: '0+1p 1+2',
    first: true,
    exact: false,
  },
  {
    rule: 'no pickup where the system begins no part or section',
    meter: '4/4',
    lines: '|5---|0---2---3---5---|',
    onsets: '0 4 5 6 7',
    bars: '0+4 4+4',
  },
  { rule: 'a lone bar is no pickup', meter: '4/4', lines: '|5---|', onsets: '0', bars: '0+4', first: true },

  {
    rule: 'the nearest sixteenth or triplet',
    meter: '4/4',
    lines: '|0-----------2---------|',
    onsets: '0 9/4',
    exact: false,
  },
  {
    rule: 'the sixteenth where a triplet is as near',
    meter: '1/4',
    lines: `|x${'-'.repeat(13)}x${'-'.repeat(33)}|`,
    onsets: '0 1/4',
    exact: false,
  },
  {
    rule: 'onsets of an uneven bar are never joined',
    meter: '1/4',
    lines: '|xxxxx-0|',
    onsets: '0 1/4 1/3 1/2 2/3 3/4',
    exact: false,
  },
  {
    rule: 'more onsets than sixteenths and triplets keep their columns',
    meter: '1/4',
    lines: '|xxxxxxx|',
    onsets: '0 1/7 2/7 3/7 4/7 5/7 6/7',
    exact: false,
  },
  {
    rule: 'a dotted beat snaps to sixteenths alone',
    meter: '6/8',
    lines: '|0---2----3----|',
    onsets: '0 3/4 2',
    exact: false,
  },
  {
    rule: 'thirds of an eighth in 7/8',
    meter: '7/8',
    lines: '|0------2-3---------------------|',
    onsets: '0 3/4 1',
    exact: false,
  },
];

describe('inferred times', () => {
  for (const row of ROWS) {
    it(`${row.rule}: ${row.meter} ${String(row.lines)}`, () => {
      const input = sketch(row.meter, row.lines, { firstInPart: row.first ?? false });
      const reading = readTimes(input);
      assert.equal(onsetTimes(input, reading), row.onsets);
      assert.equal(reading.exact, row.exact ?? true);
      assert.equal(reading.timing, 'inferred');
      if (row.bars !== undefined) assert.equal(barTimes(reading), row.bars);
    });
  }

  it('gives padding the start of its bar, a second digit the next column’s time, a sign the bar it opens', () => {
    const input = sketch('4/4', '|-10-12-0-0-|-0-0-0-0-|');
    const times = readTimes(input).columnTimes.map((time) => time.n / time.d);
    // sign, padding, 1, 0 of 10 …
    assert.deepEqual(times.slice(0, 5), [0, 0, 0, 0.5, 0.5]);
    assert.equal(times[12], 4);
    assert.equal(times[13], 4);
    assert.equal(times.length, input.width === undefined ? 0 : input.width + 1);
    assert.equal(times.at(-1), 8);
  });

  it('reads a system without bars or notes', () => {
    const empty = { ...sketch('4/4', '|0---|'), bars: [], onsets: [], onsetEnds: [], width: 3 };
    assert.deepEqual(readTimes(empty).columnTimes, Array(4).fill({ n: 0, d: 1 }));
    assert.deepEqual(readTimes(empty).bars, []);
  });
});
