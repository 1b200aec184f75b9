import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  add,
  compare,
  formatFraction,
  fraction,
  subtract,
  type Fraction,
} from '../../../../src/music/fraction';
import { barLength, isCompound, type Meter } from '../../../../src/music/meter';
import { readTimes, type TimeInput, type TimeReading } from '../../../../src/notation/time/timeInput';
import { writeCount, type CountedBar, type CountedOnset } from '../../../../src/notation/time/writeCount';
import { neverFalls, plainReading, plainReadings } from './plainModel';
import { syllables } from './sketch';

const RUNS = 2000;
const EVEN = [1, 2, 3, 4, 6, 8, 9, 12, 16, 24];

const meters: fc.Arbitrary<Meter> = fc.constantFrom(
  { upper: 4, lower: 4 },
  { upper: 3, lower: 4 },
  { upper: 2, lower: 2 },
  { upper: 5, lower: 4 },
  { upper: 7, lower: 8 },
  { upper: 6, lower: 8 },
  { upper: 12, lower: 8 },
  { upper: 9, lower: 16 },
);

/** A system of any bars, with notes, some of two digits, anywhere. */
const systems: fc.Arbitrary<TimeInput> = fc
  .record({
    meter: meters,
    widths: fc.array(
      fc.oneof(fc.constantFrom(4, 8, 9, 12, 13, 16, 17, 18, 24), fc.integer({ min: 1, max: 40 })),
      {
        minLength: 1,
        maxLength: 5,
      },
    ),
    sign: fc.integer({ min: 1, max: 2 }),
    notes: fc.array(fc.record({ at: fc.nat(200), long: fc.boolean() }), { maxLength: 24 }),
    first: fc.boolean(),
  })
  .map(({ meter, widths, sign, notes, first }) => {
    let start = 1;
    const bars = widths.map((width) => {
      const bar = { start, end: start + width };
      start += width + sign;
      return bar;
    });
    const end = bars.at(-1)?.end ?? 0;
    const inBar = (column: number): boolean => bars.some((bar) => column >= bar.start && column < bar.end);
    const onsets = [...new Set(notes.map((note) => 1 + (note.at % end)))].filter(inBar).sort((a, b) => a - b);
    const long = new Set(notes.filter((note) => note.long).map((note) => 1 + (note.at % end)));
    const seconds = onsets
      .filter((onset) => long.has(onset) && inBar(onset + 1) && !onsets.includes(onset + 1))
      .map((onset) => onset + 1);
    return {
      meter,
      bars,
      onsets,
      onsetEnds: onsets.map((onset) => (seconds.includes(onset + 1) ? onset + 1 : onset)),
      secondDigits: new Set(seconds),
      count: undefined,
      firstInPart: first,
      firstInSection: first,
      width: end + sign,
    };
  });

/** An exact grid of one pace with what carries no time, and the times it was made from. */
interface Planned {
  readonly input: TimeInput;
  readonly plan: { readonly padding: number; readonly skipDigits: boolean; readonly missing: number };
  readonly times: readonly Fraction[];
}

const grids: fc.Arbitrary<Planned> = fc
  .record({
    meter: meters,
    perBeat: fc.constantFrom(...EVEN),
    bars: fc.integer({ min: 1, max: 3 }),
    padding: fc.integer({ min: 0, max: 2 }),
    skipDigits: fc.boolean(),
    notes: fc.array(fc.record({ at: fc.nat(), long: fc.boolean() }), { minLength: 1, maxLength: 16 }),
  })
  .map(({ meter, perBeat, bars: barCount, padding, skipDigits, notes }) => {
    const beats = isCompound(meter) ? meter.upper / 3 : meter.upper;
    const cells = beats * perBeat;
    const wanted = new Map(notes.map((note) => [note.at % (cells * barCount), note.long]));
    const bars: { start: number; end: number }[] = [];
    const onsets: number[] = [];
    const onsetEnds: number[] = [];
    const seconds = new Set<number>();
    const times: Fraction[] = [];
    let column = 1;
    for (let bar = 0; bar < barCount; bar++) {
      const start = column;
      column += padding;
      for (let cell = 0; cell < cells; cell++) {
        const at = bar * cells + cell;
        const long = wanted.get(at);
        if (long !== undefined) {
          onsets.push(column);
          times.push(fraction(at * barLength(meter).n, cells * barLength(meter).d));
          // A second digit has its own column, or the dash of the next cell where no note begins.
          const shares = !skipDigits && cell + 1 < cells && !wanted.has(at + 1);
          if (long && skipDigits) column++;
          if (long && (skipDigits || shares)) seconds.add(skipDigits ? column : column + 1);
          onsetEnds.push(long && (skipDigits || shares) ? (onsets.at(-1) ?? 0) + 1 : column);
        }
        column++;
      }
      bars.push({ start, end: column });
      column++;
    }
    return {
      input: {
        meter,
        bars,
        onsets,
        onsetEnds,
        secondDigits: seconds,
        count: undefined,
        firstInPart: false,
        firstInSection: false,
      },
      plan: { padding, skipDigits: skipDigits && seconds.size > 0, missing: 0 },
      times,
    };
  });

function onsetTimes(input: TimeInput, reading: TimeReading): string[] {
  return input.onsets.map((column) => formatFraction(reading.columnTimes[column] ?? fraction(-1)));
}

function countOf(input: TimeInput, reading: TimeReading): { bars: CountedBar[]; onsets: CountedOnset[] } {
  const bars = reading.bars.map((bar, i) => ({ ...bar, ...(input.bars[i] ?? { start: 0, end: 0 }) }));
  const onsets = input.onsets.map((column, i) => {
    const bar = input.bars.findIndex(({ end }) => column < end);
    const time = subtract(
      reading.columnTimes[column] ?? fraction(0),
      reading.bars[bar]?.onset ?? fraction(0),
    );
    return { column, time, bar, end: input.onsetEnds[i] ?? column };
  });
  return { bars, onsets };
}

describe('laws of times', () => {
  it('times never fall, bars follow each other, and no two onsets are joined', () => {
    fc.assert(
      fc.property(systems, (input) => {
        const reading = readTimes(input);
        assert.ok(neverFalls(reading.columnTimes));
        assert.equal(reading.columnTimes.length, (input.width ?? 0) + 1);
        let onset = fraction(0);
        reading.bars.forEach((bar, i) => {
          assert.deepEqual(bar.onset, onset);
          assert.deepEqual(reading.columnTimes[input.bars[i]?.start ?? 0], onset);
          onset = add(onset, bar.length);
          assert.deepEqual(reading.columnTimes[input.bars[i]?.end ?? 0], onset);
        });
        assert.equal(new Set(onsetTimes(input, reading)).size, input.onsets.length);
        for (const column of input.onsets) {
          const bar = reading.bars[input.bars.findIndex(({ end }) => column < end)];
          const time = reading.columnTimes[column];
          assert.ok(
            bar && time && compare(time, bar.onset) >= 0 && compare(time, add(bar.onset, bar.length)) < 0,
          );
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('the reading taken is the one that section 7 chooses', () => {
    let even = 0;
    fc.assert(
      fc.property(systems, (input) => {
        const reading = readTimes(input);
        const plain = plainReading(input);
        assert.equal(reading.exact, plain.even === input.bars.length);
        assert.deepEqual(
          reading.bars.map((bar) => bar.length),
          plain.lengths,
        );
        plain.bars.forEach((times, i) => {
          if (times === undefined) return;
          even++;
          const bar = input.bars[i] ?? { start: 0, end: 0 };
          const read = input.onsets
            .filter((column) => column >= bar.start && column < bar.end)
            .map((column) =>
              subtract(reading.columnTimes[column] ?? fraction(-1), reading.bars[i]?.onset ?? fraction(0)),
            );
          assert.deepEqual(read, times);
        });
      }),
      { numRuns: RUNS },
    );
    assert.ok(even > RUNS, 'most systems have bars that are read exactly');
  });

  it('an exact grid is read as it was planned where no other reading is even', () => {
    let checked = 0;
    fc.assert(
      fc.property(grids, ({ input, plan, times }) => {
        const rivals = plainReadings(input).filter(
          (r) =>
            r.even === input.bars.length &&
            (r.padding !== plan.padding || r.missing !== plan.missing || r.skipDigits !== plan.skipDigits) &&
            // Without second digits both ways of counting them are one.
            (input.secondDigits.size > 0 || !r.skipDigits),
        );
        if (rivals.length > 0) return;
        checked++;
        const reading = readTimes(input);
        assert.equal(reading.exact, true);
        assert.deepEqual(onsetTimes(input, reading), times.map(formatFraction));
      }),
      { numRuns: RUNS },
    );
    assert.ok(checked > RUNS / 10, `only ${checked} plans were unambiguous`);
  });

  it('a grid of beats that begins each bar with a note is always read as planned', () => {
    fc.assert(
      fc.property(
        meters,
        fc.constantFrom(...EVEN),
        fc.integer({ min: 1, max: 4 }),
        (meter, perBeat, barCount) => {
          const beats = isCompound(meter) ? meter.upper / 3 : meter.upper;
          const width = beats * perBeat;
          const bars = Array.from({ length: barCount }, (_, i) => ({
            start: 1 + i * (width + 1),
            end: 1 + i * (width + 1) + width,
          }));
          const onsets = bars.flatMap(({ start }) =>
            Array.from({ length: beats }, (_, beat) => start + beat * perBeat),
          );
          const input = {
            meter,
            bars,
            onsets,
            onsetEnds: onsets,
            secondDigits: new Set<number>(),
            count: undefined,
            firstInPart: true,
            firstInSection: true,
          };
          const beat = fraction(barLength(meter).n, barLength(meter).d * beats);
          assert.deepEqual(
            onsetTimes(input, readTimes(input)),
            onsets.map((_, i) => formatFraction(fraction(beat.n * i, beat.d))),
          );
        },
      ),
    );
  });

  it('a count row of anything never makes times fall, and tells every problem inside the row', () => {
    const rows = fc.array(
      fc.constantFrom('1', '2', '3', '4', '7', '12', '&', 'e', 'a', 't', 'let', 'q', ' ', '  ', '   '),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(systems, rows, (input, pieces) => {
        const text = ` ${pieces.join('')}`;
        const reading = readTimes({ ...input, count: syllables(text) });
        assert.ok(neverFalls(reading.columnTimes));
        assert.equal(reading.columnTimes.length, (input.width ?? 0) + 1);
        for (const problem of reading.problems) {
          assert.equal(text.slice(problem.column, problem.column + problem.width), problem.text);
        }
        if (reading.timing === 'inferred') return;
        const joined = input.onsets.length - new Set(onsetTimes(input, reading)).size;
        assert.equal(joined, 0);
      }),
      { numRuns: RUNS },
    );
  });
});

describe('writing a count', () => {
  const roundTrip = (input: TimeInput): boolean => {
    const reading = readTimes(input);
    const { bars, onsets } = countOf(input, reading);
    const row = writeCount(input.meter, bars, onsets);
    if (row === undefined) return false;
    const again = readTimes({ ...input, count: syllables(row) });
    assert.equal(again.timing, 'counted');
    assert.deepEqual(again.problems, []);
    assert.deepEqual(again.bars, reading.bars);
    assert.deepEqual(onsetTimes(input, again), onsetTimes(input, reading));
    assert.equal(row[0], '|');
    for (const bar of input.bars) assert.equal(row[bar.end], '|');
    return true;
  };

  it('says the times of any system that it writes one for', () => {
    let written = 0;
    fc.assert(
      fc.property(systems, (input) => {
        if (roundTrip(input)) written++;
      }),
      { numRuns: RUNS },
    );
    assert.ok(written > RUNS / 3, `only ${written} of ${RUNS} were written`);
  });

  it('says the times of exact grids', () => {
    let written = 0;
    let plain = 0;
    fc.assert(
      fc.property(grids, (input) => {
        const done = roundTrip(input.input);
        if (done) written++;
        // Read as planned, a grid that begins at the sign and counts all digits needs no more than its own beats.
        const { padding } = input.plan;
        const asPlanned =
          onsetTimes(input.input, readTimes(input.input)).join() === input.times.map(formatFraction).join();
        if (
          padding === 0 &&
          input.input.secondDigits.size === 0 &&
          asPlanned &&
          input.times.every((time) => 4 % time.d === 0)
        ) {
          plain++;
          assert.ok(done);
        }
      }),
      { numRuns: RUNS },
    );
    assert.ok(written > RUNS / 2, `only ${written} of ${RUNS} were written`);
    assert.ok(plain > RUNS / 100, `only ${plain} were plain`);
  });
});
