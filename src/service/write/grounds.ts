import { add, compare, equal, subtract, ZERO, type Fraction } from '../../music/fraction';
import { printSystem } from '../../notation/print/printSystem';
import { parseLine } from '../../notation/parseLine';
import type { BarReading, SystemReading } from '../../notation/reading';
import { readSystem } from '../../notation/systemReading';
import type { System } from '../../notation/tabDocument';
import { placeAsItIs } from '../change/rewrite';
import type { Ground, Put } from './layIn';

/** Columns a quarter note that a layout may take. */
const MOST_COLUMNS = 96;

/** A system as it is, then laid out evenly with more and more columns a quarter note. */
export function* groundsOf(system: System, puts: readonly Put[]): Generator<Ground> {
  const { reading } = system;
  const lines = system.lines.map(({ text }) => text);
  yield { lines, columnOf: (onset) => columnAtTime(reading, onset) };
  const times = [
    ...puts.map(({ onset }) => onset),
    ...reading.notes.map(({ onset }) => onset),
    ...reading.stops.map(({ onset }) => onset),
    ...reading.bars.map(({ length }) => length),
  ];
  // Not narrower than it is, so that dashes that were left for more notes stay.
  const columns = reading.bars.reduce((sum, bar) => sum + bar.endColumn - bar.startColumn, 0);
  const least = Math.floor((columns * reading.length.d) / Math.max(1, reading.length.n));
  for (const size of sizes(times, least)) {
    const even = evenly(system, size);
    if (even) yield even;
  }
}

/** Columns a quarter note in which each of some times has its own column, from `least` on, the fewest first. */
export function* sizes(times: readonly Fraction[], least: number): Generator<number> {
  const step = times.map(({ d }) => d).reduce(leastCommonMultiple, 1);
  const first = Math.max(step, Math.ceil(least / step) * step);
  for (let size = first; size <= MOST_COLUMNS; size += step) yield size;
}

function columnAtTime({ bars, columnTimes }: SystemReading, onset: Fraction): number | undefined {
  const bar = bars.find(({ onset: start, length }) => compare(onset, add(start, length)) < 0);
  if (!bar) return undefined;
  // Columns that carry no time have that of the next one that does.
  for (let column = bar.endColumn - 1; column >= bar.startColumn; column--) {
    const time = columnTimes[column];
    if (time && equal(time, onset)) return column;
  }
  return undefined;
}

/** A system in which every column is worth the same time, without its count row. */
function evenly(system: System, size: number): Ground | undefined {
  const { reading, header } = system;
  const { bars, columnTimes } = reading;
  // What bar signs take, up to each bar.
  const gaps: number[] = [];
  bars.forEach(({ startColumn }, i) => {
    gaps.push((gaps[i - 1] ?? 0) + startColumn - (bars[i - 1]?.endColumn ?? 0));
  });
  const floor = (column: number): number => {
    const first = bars.findIndex(({ endColumn }) => column < endColumn);
    const at = first < 0 ? bars.length : first;
    const bar = bars[at];
    if (bar && column >= bar.startColumn)
      return floorOf(columnTimes[column] ?? reading.length, size) + (gaps[at] ?? 0);
    const before = bars[at - 1];
    if (!before) return column;
    return floorOf(add(before.onset, before.length), size) + (gaps[at - 1] ?? 0) + column - before.endColumn;
  };
  const printed = printSystem({
    system,
    firstBar: 0,
    lastBar: bars.length - 1,
    place: (index) => placeAsItIs(system, index),
    header,
    columns: 'set',
    floor,
    strings: reading.strings.map(({ number }) => number),
    keepLabels: true,
  });
  const lines = printed?.filter((line) => {
    const parsed = parseLine(line);
    return !(parsed.kind === 'row' && parsed.row === 'count');
  });
  if (!lines) return undefined;
  const { bars: placed } = readSystem(lines.map(parseLine), header, system);
  return evenGround(lines, bars, placed, size);
}

/**
 * Lines in which every column of a bar is worth as much.
 * @param times the bars as they are to be read
 * @param placed the bars as they stand in the lines
 */
export function evenGround(
  lines: readonly string[],
  times: readonly Pick<BarReading, 'onset' | 'length'>[],
  placed: readonly Pick<BarReading, 'startColumn' | 'endColumn'>[],
  size: number,
): Ground {
  return {
    lines,
    columnOf: (onset) => {
      const at = times.findIndex(({ onset: start, length }) => compare(onset, add(start, length)) < 0);
      const time = subtract(onset, times[at]?.onset ?? ZERO);
      const bar = placed[at];
      const column = (time.n * size) / time.d;
      if (!bar || !Number.isInteger(column) || bar.startColumn + column >= bar.endColumn) return undefined;
      return bar.startColumn + column;
    },
  };
}

function floorOf(time: Fraction, size: number): number {
  return Math.floor((time.n * size) / time.d);
}

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y) [x, y] = [y, x % y];
  return (a / x) * b;
}
