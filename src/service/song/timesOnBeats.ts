import { add, equal, fraction, multiply, subtract, toNumber, type Fraction } from '../../music/fraction';
import type { Meter } from '../../music/meter';
import type { BarReading } from '../../notation/reading';
import type { System } from '../../notation/tabDocument';
import { meterTicks, quarters } from '../../notation/time/ticks';

/** When something in a row begins. */
export interface RowTime {
  /** Quarter notes from the system's start. */
  readonly time: Fraction;
  /** Whether it goes to a beat since its bar's columns divide into no time that could be counted. */
  readonly guessed: boolean;
}

/**
 * When the chords of a row begin: as the system is read, and in a bar whose columns do not divide evenly, where the
 * reading can only guess, each on a beat of its own as near as can be. A player who writes names over words means beats.
 * @param columns where they stand, ascending
 * @param inBar the index of the bar of each
 */
export function timesOnBeats(
  system: System,
  columns: readonly number[],
  inBar: readonly number[],
): RowTime[] {
  const { bars, columnTimes, length, timing } = system.reading;
  const times = columns.map((column): RowTime => ({ time: columnTimes[column] ?? length, guessed: false }));
  if (timing === 'counted') return times;
  bars.forEach((bar, at) => {
    const here = columns.flatMap((_, i) => (inBar[i] === at ? [i] : []));
    if (here.length === 0 || isEven(bar, columnTimes)) return;
    const width = bar.endColumn - bar.startColumn;
    const wanted = here.map((i) => {
      const share = fraction((columns[i] ?? 0) - bar.startColumn, width);
      return add(bar.onset, multiply(share, bar.length));
    });
    const beats = nearestBeats(wanted, beatsOf(bar, system.header.meter));
    here.forEach((i, k) => {
      const beat = beats?.[k];
      if (beat) times[i] = { time: beat, guessed: !equal(beat, wanted[k] ?? beat) };
    });
  });
  return times;
}

/** Whether every column of a bar that carries time lasts as long as the others. */
function isEven({ startColumn, endColumn }: BarReading, times: readonly Fraction[]): boolean {
  let step: Fraction | undefined;
  for (let column = startColumn; column < endColumn - 1; column++) {
    const [from, to] = [times[column], times[column + 1]];
    if (!from || !to || equal(from, to)) continue;
    const here = subtract(to, from);
    if (step && !equal(step, here)) return false;
    step = here;
  }
  return true;
}

/** The beats of a bar in quarter notes from the system's start; those of a pickup are counted from its end. */
export function beatsOf(bar: BarReading, meter: Meter): Fraction[] {
  const beat = beatLength(meter);
  const end = add(bar.onset, bar.length);
  const beats: Fraction[] = [];
  for (
    let time = subtract(end, beat);
    toNumber(time) >= toNumber(bar.onset) - 1e-9;
    time = subtract(time, beat)
  )
    beats.unshift(time);
  // A bar that lasts no whole number of beats begins between two.
  if (!beats[0] || !equal(beats[0], bar.onset)) beats.unshift(bar.onset);
  return beats;
}

/** A beat of a meter, in quarter notes: the lower note, or a dotted one. */
export function beatLength(meter: Meter): Fraction {
  const { perBeat, perQuarter } = meterTicks(meter);
  return quarters(perBeat, perQuarter);
}

/** Beats in ascending order, none taken twice, with the least distance in all; undefined where there are too few. */
function nearestBeats(wanted: readonly Fraction[], beats: readonly Fraction[]): Fraction[] | undefined {
  if (wanted.length > beats.length) return undefined;
  // least[i][j]: the least distance of the first i wanted times within the first j beats.
  const least = [new Array<number>(beats.length + 1).fill(0)];
  wanted.forEach((time, i) => {
    const row = [Infinity];
    beats.forEach((beat, j) => {
      const taken = (least[i]?.[j] ?? Infinity) + Math.abs(toNumber(beat) - toNumber(time));
      row.push(Math.min(row[j] ?? Infinity, taken));
    });
    least.push(row);
  });
  const chosen: Fraction[] = [];
  let j = beats.length;
  for (let i = wanted.length; i > 0; i--) {
    while (least[i]?.[j - 1] === least[i]?.[j]) j--;
    const beat = beats[--j];
    if (beat) chosen.unshift(beat);
  }
  return chosen;
}
