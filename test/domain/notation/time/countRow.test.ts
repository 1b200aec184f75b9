import assert from 'node:assert/strict';
import { splitNumbers, splitRun } from '../../../../src/notation/time/syllables';
import { readTimes } from '../../../../src/notation/time/timeInput';
import { barTimes, onsetTimes, sketch } from './sketch';

interface Row {
  readonly rule: string;
  readonly meter: string;
  readonly lines: string | readonly string[];
  readonly count: string;
  readonly onsets: string;
  readonly bars?: string;
  readonly first?: boolean;
}

const ROWS: readonly Row[] = [
  {
    rule: 'numbers and halves',
    meter: '4/4',
    lines: '|0-0-0-0-0-0-0-0-|',
    count: '|1 & 2 + 3 & 4 + |',
    onsets: '0 1/2 1 3/2 2 5/2 3 7/2',
  },
  {
    rule: 'quarters of a beat, touching',
    meter: '2/4',
    lines: '|xxxxxxxx|',
    count: '|1e&a2e&a|',
    onsets: '0 1/4 1/2 3/4 1 5/4 3/2 7/4',
  },
  {
    rule: 'thirds by one letter',
    meter: '2/4',
    lines: '|0-0-0-0-0-0-|',
    count: '|1 t l 2 t l |',
    onsets: '0 1/3 2/3 1 4/3 5/3',
  },
  {
    rule: 'thirds by word',
    meter: '2/4',
    lines: '|0----0----0---0----0----0---|',
    count: '|1    trip let 2    trip let |',
    onsets: '0 1/3 2/3 1 4/3 5/3',
  },
  { rule: 'capitals', meter: '2/4', lines: '|x-x-x-x-|', count: '|1 E & A |', onsets: '0 1/4 1/2 3/4' },
  {
    rule: 'beats left out',
    meter: '4/4',
    lines: '|0-0--0----0|',
    count: '|1    3    4|',
    onsets: '0 4/5 2 3',
  },
  {
    rule: 'time runs evenly between pins',
    meter: '4/4',
    lines: '|0-0-0-0---------|',
    count: '|1     2         |',
    onsets: '0 1/3 2/3 1',
  },
  {
    rule: 'second digits carry time',
    meter: '4/4',
    lines: '|10-12-0-|',
    count: '|1       |',
    onsets: '0 3/2 3',
  },
  {
    rule: 'a syllable over a second digit pins the note',
    meter: '4/4',
    lines: '|10--12--|',
    count: '|1    2  |',
    onsets: '0 1',
  },
  {
    rule: 'the second of two syllables over one note has its own column',
    meter: '4/4',
    lines: '|12--0-|',
    count: '|1&  3 |',
    onsets: '0 2',
  },
  {
    rule: 'bar lines may be left out',
    meter: '2/4',
    lines: '|0-0-|0-0-|',
    count: '|1 2  1 2',
    onsets: '0 1 2 3',
  },
  {
    rule: 'a bar without syllables runs evenly',
    meter: '2/4',
    lines: '|0-0-|0--0-|',
    count: '|1 2',
    onsets: '0 1 2 16/5',
  },
  {
    rule: 'a 1 past the bar sign makes padding',
    meter: '2/4',
    lines: '|--0-0-|',
    count: '|  1 2 |',
    onsets: '0 1',
  },
  {
    rule: 'the lower note counts',
    meter: '7/8',
    lines: '|0-0-0-0-0-0-0-|',
    count: '|1 2 3 4 5 6 7 |',
    onsets: '0 1/2 1 3/2 2 5/2 3',
  },
  {
    rule: 'halves of an eighth',
    meter: '3/8',
    lines: '|xxxxxx|',
    count: '|1&2&3&|',
    onsets: '0 1/4 1/2 3/4 1 5/4',
  },
  { rule: 'half notes count in 2/2', meter: '2/2', lines: '|0---0---|', count: '|1 & 2 & |', onsets: '0 2' },

  { rule: 'dotted beats', meter: '6/8', lines: '|0--0--|', count: '|1  2  |', onsets: '0 3/2' },
  {
    rule: 'thirds of dotted beats',
    meter: '12/8',
    lines: '|xxxxxxxxxxxx|',
    count: '|1&a2&a3&a4&a|',
    onsets: '0 1/2 1 3/2 2 5/2 3 7/2 4 9/2 5 11/2',
  },
  {
    rule: 'a number above a third makes all numbers lower notes',
    meter: '6/8',
    lines: '|0-0-0-|0----0|',
    count: '|1 2 3 |1    6|',
    onsets: '0 1/2 1 3 11/2',
  },
  {
    rule: 'sixteenths of 6/8',
    meter: '6/8',
    lines: '|xx----x-----|',
    count: '|1&2&3&4&5&6&|',
    onsets: '0 1/4 3/2',
  },
  {
    rule: 'dotted eighths of 9/16',
    meter: '9/16',
    lines: '|0--0--0--|',
    count: '|1  2  3 a|',
    onsets: '0 3/4 3/2',
  },
  { rule: '3/8 has no dotted count', meter: '3/8', lines: '|0-0-|', count: '|1 3 |', onsets: '0 1' },

  {
    rule: 'a pickup of two beats',
    meter: '4/4',
    lines: '|0-0-|0---0---|',
    count: '|3 4 |1   3   |',
    onsets: '0 1 2 4',
    bars: '0+2p 2+4',
    first: true,
  },
  {
    rule: 'a pickup that begins between beats',
    meter: '4/4',
    lines: '|0-0-|0---0---|',
    count: '|a   |1   3   |',
    onsets: '0 1/8 1/4 9/4',
    bars: '0+1/4p 1/4+4',
    first: true,
  },
  {
    rule: 'an & alone is the last',
    meter: '3/4',
    lines: '|0-|0-0-0-|',
    count: '|& |1 2 3 |',
    onsets: '0 1/2 3/2 5/2',
    bars: '0+1/2p 1/2+3',
    first: true,
  },
  {
    rule: 'an & before 4 is that of 3',
    meter: '4/4',
    lines: '|0-0-|0-0-0-0-|',
    count: '|& 4 |1 2 3 4 |',
    onsets: '0 1/2 3/2 5/2 7/2 9/2',
    bars: '0+3/2p 3/2+4',
    first: true,
  },
  {
    rule: 'a pickup of a dotted beat',
    meter: '6/8',
    lines: '|xxx|xxxxxx|',
    count: '|2&a|1&a2&a|',
    onsets: '0 1/2 1 3/2 2 5/2 3 7/2 4',
    bars: '0+3/2p 3/2+3',
    first: true,
  },
  {
    rule: '12 alone is the last eighth of 12/8',
    meter: '12/8',
    lines: '|0-|0-----------|',
    count: '|12|1 2 3 4 5 6 |',
    onsets: '0 1/2',
    bars: '0+1/2p 1/2+6',
    first: true,
  },
  {
    rule: 'padding before a pickup',
    meter: '4/4',
    lines: '|-0---|-0---0---0---0---|',
    count: '| 4 & | 1   2   3   4   |',
    onsets: '0 1 2 3 4',
    bars: '0+1p 1+4',
    first: true,
  },
  {
    rule: 'a first bar whose first beats are not written is full',
    meter: '4/4',
    lines: '|0-0-0-0-|',
    count: '|    3 4 |',
    onsets: '0 1 2 3',
    bars: '0+4',
    first: true,
  },
  {
    rule: 'a pickup whose first note is before its first syllable',
    meter: '4/4',
    lines: '|0-0-|0-0-0-0-|',
    count: '|  4 |1 2 3 4 |',
    onsets: '0 1 2 3 4 5',
    bars: '0+2p 2+4',
    first: true,
  },
];

/** Text of the problems: kind, column, syllable and facts. */
function problems(meter: string, line: string, count: string, first = false): string[] {
  return readTimes(sketch(meter, line, { count, firstInPart: first })).problems.map(
    ({ kind, column, width, text, facts }) => `${kind} ${column}+${width} ${text} ${JSON.stringify(facts)}`,
  );
}

describe('counted times', () => {
  for (const row of ROWS) {
    it(`${row.rule}: ${row.meter} ${row.count}`, () => {
      const input = sketch(row.meter, row.lines, { count: row.count, firstInPart: row.first ?? false });
      const reading = readTimes(input);
      assert.equal(onsetTimes(input, reading), row.onsets);
      assert.deepEqual(reading.problems, []);
      assert.equal(reading.timing, 'counted');
      assert.equal(reading.exact, true);
      if (row.bars !== undefined) assert.equal(barTimes(reading), row.bars);
    });
  }

  it('tells syllables that are none, and pins by the others', () => {
    assert.deepEqual(problems('4/4', '|0---0---|', '|1 foo 3 |'), [
      'count-syllable 3+3 foo {"meter":"4/4","dotted":0}',
    ]);
    const input = sketch('4/4', '|0---0---|', { count: '|1 q 4   |' });
    assert.equal(onsetTimes(input), '0 3');
  });

  it('tells an e in dotted beats', () => {
    assert.deepEqual(problems('6/8', '|0--0--|', '|1e&2  |'), [
      'count-syllable 2+1 e {"meter":"6/8","dotted":1}',
    ]);
  });

  it('tells numbers that the meter has not, once for their parts too', () => {
    assert.deepEqual(problems('3/4', '|0-0-0-0-|', '|1 2 3 4&|'), [
      'count-range 7+1 4 {"meter":"3/4","highest":3}',
    ]);
    assert.deepEqual(problems('4/4', '|0-0-0-0-|', '|0 2 3 15|'), [
      'count-range 1+1 0 {"meter":"4/4","highest":4}',
      'count-range 7+2 15 {"meter":"4/4","highest":4}',
    ]);
  });

  it('tells syllables out of order', () => {
    assert.deepEqual(problems('4/4', '|0-0-0-0-|', '|1 3 2 4 |'), ['count-order 5+1 2 {"after":"3"}']);
    assert.deepEqual(problems('4/4', '|0-0-0-0-|', '|1 & & 4 |'), ['count-order 5+1 & {"after":"&"}']);
    assert.deepEqual(problems('4/4', '|--0-0-0-|', '|& 1 3 4 |'), ['count-order 1+1 & {"after":""}']);
  });

  it('tells syllables over a bar sign or past the last', () => {
    assert.deepEqual(problems('2/4', '|0-0-||0-0-|', '|1 2  1  2  &'), [
      'count-fit 6+1 1 {"reason":"outside"}',
      'count-fit 12+1 & {"reason":"outside"}',
    ]);
  });

  it('tells a bar that begins late where no pickup can be', () => {
    assert.deepEqual(problems('4/4', '|0---|0---|', '|1   |2   |', true), [
      'count-fit 6+1 2 {"reason":"late","expected":"1"}',
    ]);
    assert.deepEqual(problems('4/4', '|0---|0---|', '|4   |1   |'), [
      'count-fit 1+1 4 {"reason":"late","expected":"1"}',
    ]);
    assert.deepEqual(problems('4/4', '|0---|0---|', '|4   |1   |', true), []);
  });

  it('never joins a note with one before the 1 of its bar', () => {
    const input = sketch('2/4', '|0-0-|', { count: '|  1 |' });
    assert.deepEqual(
      readTimes({
        ...input,
        count: [...(input.count ?? []), { text: '&', column: 4, width: 1 }],
      }).problems.map((p) => p.kind),
      ['count-fit'],
    );
    assert.equal(onsetTimes(input), '0 1');
  });

  it('falls back on the columns while no syllable can be read', () => {
    const reading = readTimes(sketch('4/4', '|0-0-0-0-|', { count: '|what|' }));
    assert.equal(reading.timing, 'inferred');
    assert.equal(reading.problems.length, 1);
    assert.equal(readTimes(sketch('4/4', '|0-0-0-0-|', { count: '|' })).timing, 'inferred');
  });
});

describe('syllables', () => {
  it('come apart where they touch', () => {
    const apart = (text: string): string =>
      splitRun(text, 0)
        .map((s) => `${s.text}@${s.column}`)
        .join(' ');
    assert.equal(apart('1&2&'), '1@0 &@1 2@2 &@3');
    assert.equal(apart('1triplet2'), '1@0 trip@1 let@5 2@8');
    assert.equal(apart('1e+a'), '1@0 e@1 +@2 a@3');
    assert.equal(apart('1take2'), '1@0 take@1 2@5');
  });

  it('split digits into ascending numbers, leaving out as few as can be', () => {
    assert.deepEqual(splitNumbers('101112', 9, 12), [10, 11, 12]);
    assert.deepEqual(splitNumbers('12', 0, 4), [1, 2]);
    assert.deepEqual(splitNumbers('12', 0, 12), [1, 2]);
    assert.deepEqual(splitNumbers('12', 11, 12), [12]);
    assert.deepEqual(splitNumbers('12', 5, 12), [12]);
    assert.deepEqual(splitNumbers('123456789101112', 0, 12), [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    assert.deepEqual(splitNumbers('15', 0, 4), [15]);
    assert.deepEqual(splitNumbers('0', 0, 4), [0]);
  });
});
