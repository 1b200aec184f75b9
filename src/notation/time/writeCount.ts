import { add, equal, type Fraction } from '../../music/fraction';
import type { Meter } from '../../music/meter';
import { allParts, planBar, usualParts, type BarToCount, type Fullness, type Mark } from './countPlan';
import { readTimes } from './readTimes';
import { countUnit } from './syllables';
import { meterTicks } from './ticks';
import type { CountSyllable } from './timeInput';

/** A bar to be counted: its columns as in a time input, its times as in a time reading. */
export interface CountedBar {
  readonly start: number;
  readonly end: number;
  readonly onset: Fraction;
  readonly length: Fraction;
  readonly pickup: boolean;
}

/** An onset to be pinned. */
export interface CountedOnset {
  readonly column: number;
  /** Quarter notes from the start of its bar. */
  readonly time: Fraction;
  /** Index of its bar. */
  readonly bar: number;
  /**
   * The last column that its characters take. Without it no syllable is put between an onset that has no syllable of
   * its own and the next onset, since it might stand over that note and pin it.
   */
  readonly end?: number;
}

/** Columns past a bar sign at which the first syllable of a bar without a note there is tried. */
const HOMES = [0, 1, 2];
const FULLNESS: readonly Fullness[] = ['usual', 'bare', 'full'];

/**
 * Writes the body of a count row, `|` at column 0 and at the end of each bar, that `readTimes` reads as exactly these
 * times. Onsets whose time has a syllable get it at their column. Between them beats, and halves or the lower notes of
 * dotted beats where some onset has them, are written where they fall on a column and touch nothing, so that the row
 * reads as people count. Onsets without a syllable must lie evenly between two.
 *
 * Whatever is written has been read back; undefined when no row was found that says these times, as when two
 * syllables need one column.
 * @example
 * // 4/4, one bar from column 1 to 17, onsets at columns 1 (0) and 7 (3/2)
 * writeCount(…) // '|1   2 & 3   4   |'
 */
export function writeCount(
  meter: Meter,
  bars: readonly CountedBar[],
  onsets: readonly CountedOnset[],
): string | undefined {
  const ticks = meterTicks(meter);
  const ticksOf = (time: Fraction): number => (time.n * ticks.perQuarter) / time.d;
  const planned: BarToCount[] = bars.map((bar, index) => {
    const from = ticks.perBar - ticksOf(bar.length);
    const own = onsets.filter((onset) => onset.bar === index).sort((a, b) => a.column - b.column);
    return {
      start: bar.start,
      end: bar.end,
      from,
      to: ticks.perBar,
      onsets: own.map(({ column, time, end }) => ({
        column,
        tick: from + ticksOf(time),
        end: end ?? Infinity,
      })),
    };
  });
  const played = planned.flatMap((bar) => bar.onsets.map((onset) => onset.tick));
  for (const dotted of ticks.compound ? [true, false] : [false]) {
    const unit = countUnit(ticks, dotted);
    for (const fullness of FULLNESS) {
      const parts = fullness === 'full' ? allParts(unit) : usualParts(played, unit);
      for (const home of HOMES) {
        const marks = planned.flatMap((bar) => planBar(bar, { unit, fullness, parts, home }));
        const text = writeBody(bars, marks);
        if (readsBack(text, meter, bars, onsets)) return text;
      }
    }
  }
  return undefined;
}

function writeBody(bars: readonly CountedBar[], marks: readonly Mark[]): string {
  const signs = [{ column: 0, text: '|' }, ...bars.map((bar) => ({ column: bar.end, text: '|' }))];
  const all = [...signs, ...marks].sort((a, b) => a.column - b.column);
  return all.reduce((text, mark) => text.padEnd(mark.column) + mark.text, '');
}

function readsBack(
  text: string,
  meter: Meter,
  bars: readonly CountedBar[],
  onsets: readonly CountedOnset[],
): boolean {
  const sorted = [...onsets].sort((a, b) => a.column - b.column);
  const pickup = bars[0]?.pickup ?? false;
  const count: CountSyllable[] = [...text.matchAll(/[^\s|]+/g)].map((run) => ({
    text: run[0],
    column: run.index,
    width: run[0].length,
  }));
  if (count.length === 0) return false;
  // A row without a pickup must read the same wherever the system comes to stand.
  return (pickup ? [true] : [true, false]).every((first) => {
    const reading = readTimes({
      meter,
      bars,
      onsets: sorted.map((onset) => onset.column),
      onsetEnds: sorted.map((onset) => onset.end ?? onset.column),
      secondDigits: new Set(),
      count,
      firstInPart: first,
      firstInSection: first,
    });
    return (
      reading.problems.length === 0 &&
      bars.every((bar, index) => {
        const read = reading.bars[index];
        return read !== undefined && equal(read.length, bar.length) && read.pickup === bar.pickup;
      }) &&
      sorted.every((onset) => {
        const bar = bars[onset.bar];
        const read = reading.bars[onset.bar];
        const time = reading.columnTimes[onset.column];
        return (
          bar !== undefined &&
          read !== undefined &&
          time !== undefined &&
          equal(time, add(read.onset, onset.time))
        );
      })
    );
  });
}
