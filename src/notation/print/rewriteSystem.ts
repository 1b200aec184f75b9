import { add, equal, type Fraction, subtract, ZERO } from '../../music/fraction';
import { columnsFrom } from '../columns';
import { parseLine } from '../parseLine';
import type { SystemReading } from '../reading';
import { readSystem, type SystemPosition } from '../systemReading';
import { writeCount, type CountedBar, type CountedOnset } from '../time/writeCount';
import { compareWith, expectedOf, inPairs, type Expected } from './expected';
import { printSystem, type PrintRequest } from './printSystem';

/** A passage of a system to be written anew. */
export interface RewriteRequest extends Omit<PrintRequest, 'columns' | 'floor'> {
  /** Where the lines will stand. */
  readonly position: SystemPosition;
  /**
   * Whether stops may come at another moment rather than that nothing is written: a stop may have had its moment from
   * a note that is gone, such as a fifth of a beat, which no count says.
   */
  readonly stopsMayMove?: boolean;
}

/** Columns a quarter note that an even layout may take. */
const MOST_COLUMNS = 96;
/** As many as a layout may take for the sake of marks alone, and how many layouts are tried for them. */
const MOST_COLUMNS_FOR_MARKS = 16;
const MOST_LAYOUTS_FOR_MARKS = 6;

/**
 * Writes a passage of a system and reads it back: every onset is the same exact fraction, every note on the string and
 * fret asked for, joined as it was. The plainest layout that says so is taken: the columns as they are, then room for
 * second digits, then a count row, then columns laid out evenly by time under a count row. Among those that do, one is
 * preferred in which the marks of rows, and bends and releases that come later, keep their exact times, too.
 * @returns the lines, or undefined when no layout says it (times that no count can say, notes that do not fit)
 */
export function rewriteSystem(request: RewriteRequest): string[] | undefined {
  const all = expectedOf(request.system, request.firstBar, request.lastBar, request.place);
  // A note from an earlier system may be ended on a string that the new tuning does not have.
  const stops = all.stops.filter(({ string }) => string <= request.header.tuning.strings.length);
  const expected = { ...all, stops };
  const exactly = plainest(request, expected);
  if (exactly || !request.stopsMayMove || expected.stops.length === 0) return exactly;
  return plainest(request, { ...expected, stopsAnywhere: true });
}

/** The plainest lines that say what is expected. */
function plainest(request: RewriteRequest, expected: Expected): string[] | undefined {
  let notesAlone: string[] | undefined;
  let forMarks = 0;
  for (const lines of layouts(request, expected)) {
    if (notesAlone && ++forMarks > MOST_LAYOUTS_FOR_MARKS) break;
    if (!lines) continue;
    const says = compareWith(read(lines, request), expected);
    if (says === 'everything') return lines;
    if (says === 'the notes') notesAlone ??= lines;
  }
  return notesAlone;
}

/** Ways to write the passage, the plainest first; undefined where a count cannot be written. */
function* layouts(request: RewriteRequest, expected: Expected): Generator<string[] | undefined> {
  yield printSystem({ ...request, columns: 'as they are' });
  const plain = printSystem({ ...request, columns: 'set' });
  yield plain;
  const roomy = printSystem({ ...request, columns: 'roomy' });
  yield roomy;
  for (const lines of [plain, roomy]) {
    yield withCount(lines, request, expected, false);
    yield withCount(lines, request, expected, true);
  }
  for (const columns of columnsToTry(request, expected)) {
    const lines = evenly(columns, request);
    yield withCount(lines, request, expected, false);
    yield withCount(lines, request, expected, true);
  }
}

function read(lines: readonly string[], { header, position }: RewriteRequest): SystemReading {
  return readSystem(lines.map(parseLine), header, position);
}

/**
 * The lines under a count row that pins every onset; undefined when a count cannot.
 * @param marksToo whether it pins the marks of rows, and what a hand does later, as well
 */
function withCount(
  lines: readonly string[] | undefined,
  request: RewriteRequest,
  expected: Expected,
  marksToo: boolean,
): string[] | undefined {
  if (!lines) return undefined;
  const reading = read(lines, request);
  const old = request.system.reading.bars.slice(request.firstBar, request.lastBar + 1);
  if (reading.bars.length !== old.length) return undefined;
  let onset = ZERO;
  const bars = reading.bars.map((bar, i): CountedBar => {
    const length = old[i]?.length ?? bar.length;
    const counted = {
      start: bar.startColumn,
      end: bar.endColumn,
      onset,
      length,
      pickup: old[i]?.pickup ?? false,
    };
    onset = add(onset, length);
    return counted;
  });
  const onsets = onsetsToCount(reading, bars, expected);
  if (!onsets) return undefined;
  if (marksToo && !addMarks(onsets, reading, bars, lines, expected)) return undefined;
  const body = writeCount(request.header.meter, bars, [...onsets.values()]);
  if (body === undefined) return undefined;
  const rest = lines.filter((line) => {
    const parsed = parseLine(line);
    return !(parsed.kind === 'row' && parsed.row === 'count');
  });
  return setUnder('count', body, rest);
}

/** Onsets to be counted, by their columns. */
type Pins = Map<number, CountedOnset>;

/** The columns of printed notes and stops with the times they are to have; undefined where one column has two times. */
function onsetsToCount(
  reading: SystemReading,
  bars: readonly CountedBar[],
  expected: Expected,
): Pins | undefined {
  const pins: Pins = new Map();
  const found = inPairs(reading, expected);
  for (const [i, { onset }] of expected.notes.entries()) {
    const note = found[i];
    if (!note) return undefined;
    const end = note.column + note.numberEnd - note.numberStart - 1;
    if (!pin(pins, bars, note.column, onset, end)) return undefined;
  }
  if (expected.stopsAnywhere) return pins;
  const left = [...reading.stops];
  for (const { string, onset } of expected.stops) {
    const at = left.findIndex((stop) => stop.string === string);
    const [stop] = at < 0 ? [] : left.splice(at, 1);
    if (!stop || !pin(pins, bars, stop.column, onset, stop.column)) return undefined;
  }
  return pins;
}

/** Pins a column to a time; tells whether it had no other one. */
function pin(pins: Pins, bars: readonly CountedBar[], column: number, onset: Fraction, end: number): boolean {
  const bar = Math.max(
    0,
    bars.findIndex((b) => column < b.end),
  );
  const time = subtract(onset, bars[bar]?.onset ?? ZERO);
  const known = pins.get(column);
  if (known && !equal(known.time, time)) return false;
  pins.set(column, { column, time, bar, end: Math.max(known?.end ?? 0, end) });
  return true;
}

/** Adds the marks of rows, bends and releases whose columns would have another time; tells whether there are any. */
function addMarks(
  pins: Pins,
  reading: SystemReading,
  bars: readonly CountedBar[],
  lines: readonly string[],
  expected: Expected,
): boolean {
  const before = pins.size;
  const add = (column: number, onset: Fraction | undefined): void => {
    const inBar = bars.some(({ start, end }) => column >= start && column < end);
    if (onset && inBar && !pins.has(column)) pin(pins, bars, column, onset, column);
  };
  const rows = reading.rows.filter(({ row, marks }) => row !== 'count' && marks.length > 0);
  expected.marks.forEach((times, row) => {
    times.forEach((time, i) => {
      const column = rows[row]?.marks[i]?.column;
      if (column !== undefined) add(column, time);
    });
  });
  const found = inPairs(reading, expected);
  expected.notes.forEach(({ techniques }, i) => {
    techniques.forEach(({ onset }, k) => {
      const technique = found[i]?.techniques[k];
      const line = technique && parseLine(lines[technique.line] ?? '');
      if (line?.kind === 'string') add(columnsFrom(line.text, line.bodyStart)(technique?.start ?? 0), onset);
    });
  });
  return pins.size > before;
}

/** Puts a row on top of lines, its first bar line over theirs. */
export function setUnder(word: string, body: string, lines: readonly string[]): string[] {
  const first = lines.map(parseLine).find((line) => line.kind === 'string' || line.kind === 'row');
  const start = first?.kind === 'string' || first?.kind === 'row' ? first.bodyStart : 0;
  const width = Math.max(start, word.length + 1);
  const padded = lines.map((line) => {
    const parsed = parseLine(line);
    if (parsed.kind !== 'string' && parsed.kind !== 'row') return line;
    return line.slice(0, parsed.bodyStart).padEnd(width) + line.slice(parsed.bodyStart);
  });
  return [word.padEnd(width) + body, ...padded];
}

/** Columns a quarter note in which every time of the passage has its own column, the fewest first. */
function columnsToTry({ system, firstBar, lastBar }: RewriteRequest, expected: Expected): number[] {
  const bars = system.reading.bars.slice(firstBar, lastBar + 1);
  const times = [
    ...expected.notes.map(({ onset }) => onset),
    ...expected.stops.map(({ onset }) => onset),
    ...bars.map(({ length }) => length),
  ];
  const marks = [
    ...expected.marks.flat(),
    ...expected.notes.flatMap(({ techniques }) => techniques.flatMap(({ onset }) => onset ?? [])),
  ];
  const least = times.map(({ d }) => d).reduce(leastCommonMultiple, 1);
  const withMarks = marks.map(({ d }) => d).reduce(leastCommonMultiple, least);
  const sizes = new Set<number>();
  for (const step of withMarks <= MOST_COLUMNS_FOR_MARKS ? [withMarks, least] : [least]) {
    for (let columns = step; columns <= Math.max(MOST_COLUMNS, step); columns += step) sizes.add(columns);
  }
  return [...sizes];
}

/** A layout in which every column is worth the same time. */
function evenly(perQuarter: number, request: RewriteRequest): string[] | undefined {
  const { columnTimes, bars } = request.system.reading;
  const first = bars[request.firstBar];
  const start = first?.onset ?? ZERO;
  const floor = (column: number): number => {
    if (column < (first?.startColumn ?? 0)) return 0;
    const time = subtract(columnTimes[column] ?? ZERO, start);
    const bar = bars.findIndex((b) => column < b.endColumn);
    const before = (bar < 0 ? bars.length : bar) - request.firstBar;
    // Each bar sign takes a column of its own.
    return Math.floor((time.n * perQuarter) / time.d) + before + 1;
  };
  return printSystem({ ...request, columns: 'set', floor });
}

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y) [x, y] = [y, x % y];
  return (a / x) * b;
}
