import { readMeter } from '../../../../src/music/meter';
import { formatFraction } from '../../../../src/music/fraction';
import { readTimes, type TimeInput, type TimeReading } from '../../../../src/notation/time/timeInput';

/** What a sketch may add to its lines. */
export interface SketchOptions {
  readonly count?: string;
  readonly firstInPart?: boolean;
  readonly firstInSection?: boolean;
}

/**
 * A time input from one string line without its label, or several of equal length: numbers, `x` and dashes between bar
 * signs made of `|` and `:`. A plain model of what the resolver finds, for these tests alone.
 */
export function sketch(
  meterText: string,
  lines: string | readonly string[],
  options: SketchOptions = {},
): TimeInput {
  const meter = readMeter(meterText);
  if (!meter.ok) throw new Error(meter.error.message);
  const strings = typeof lines === 'string' ? [lines] : lines;
  const width = Math.max(...strings.map((line) => line.length));
  if (strings.some((line) => line.length !== width)) throw new Error('lines of a sketch are of one length');
  const signs = new Set<number>();
  const ends = new Map<number, number>();
  const seconds = new Set<number>();
  const others = new Set<number>();
  for (const line of strings) {
    for (const found of line.matchAll(/[|:]+|\d+|x/g)) {
      const end = found.index + found[0].length;
      for (let column = found.index; column < end; column++) {
        if (/[|:]/.test(found[0])) signs.add(column);
        else (column > found.index ? seconds : others).add(column);
      }
      if (!/[|:]/.test(found[0])) ends.set(found.index, Math.max(end - 1, ends.get(found.index) ?? 0));
    }
  }
  const bars: { start: number; end: number }[] = [];
  for (let column = 1; column < width; column++) {
    if (signs.has(column)) continue;
    const start = column;
    while (column < width && !signs.has(column)) column++;
    bars.push({ start, end: column });
  }
  const onsets = [...ends.keys()].sort((a, b) => a - b);
  return {
    meter: meter.value,
    bars,
    onsets,
    onsetEnds: onsets.map((onset) => ends.get(onset) ?? onset),
    secondDigits: new Set([...seconds].filter((column) => !others.has(column))),
    count: options.count === undefined ? undefined : syllables(options.count),
    firstInPart: options.firstInPart ?? false,
    firstInSection: options.firstInSection ?? options.firstInPart ?? false,
    width,
  };
}

/** The runs of a count row's body between spaces and bar lines. */
export function syllables(body: string): NonNullable<TimeInput['count']> {
  return [...body.matchAll(/[^\s|]+/g)].map((run) => ({
    text: run[0],
    column: run.index,
    width: run[0].length,
  }));
}

/** Times of the onsets from the system's start, in quarter notes, as text: `0 1/2 1`. */
export function onsetTimes(input: TimeInput, reading: TimeReading = readTimes(input)): string {
  return input.onsets
    .map((column) => {
      const time = reading.columnTimes[column];
      return time === undefined ? '?' : formatFraction(time);
    })
    .join(' ');
}

/** The bars of a reading as `onset+length`, with `p` for a pickup. */
export function barTimes(reading: TimeReading): string {
  return reading.bars
    .map((bar) => `${formatFraction(bar.onset)}+${formatFraction(bar.length)}${bar.pickup ? 'p' : ''}`)
    .join(' ');
}
