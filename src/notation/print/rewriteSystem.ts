import { add, equal, type Fraction, subtract, ZERO } from '../../music/fraction';
import { parseLine } from '../parseLine';
import type { ParsedLine } from '../parsedLine';
import type { NoteReading, SystemReading } from '../reading';
import { readSystem, type SystemPosition } from '../systemReading';
import { writeCount } from '../time/writeCount';
import { printSystem, type PrintRequest } from './printSystem';
import type { NotePlace } from './pieces';

/** A passage of a system to be written anew. */
export interface RewriteRequest extends Omit<PrintRequest, 'roomy' | 'floor'> {
  /** Where the lines will stand. */
  readonly position: SystemPosition;
}

/** Columns a quarter note that an even layout may take, beyond what its times need. */
const MOST_COLUMNS = 96;

/**
 * Writes a passage of a system and reads it back: every onset is the same exact fraction, every note on the string and
 * fret asked for. The plainest layout that says so is taken: the columns as they are, then room for second digits,
 * then a count row, then columns laid out evenly by time under a count row.
 * @returns the lines, or undefined when no layout says it (times that no count can say)
 */
export function rewriteSystem(request: RewriteRequest): string[] | undefined {
  const expected = expectedNotes(request);
  for (const roomy of [false, true]) {
    const lines = printSystem({ ...request, roomy });
    if (says(lines, request, expected)) return lines;
  }
  for (const roomy of [false, true]) {
    const lines = withCount(printSystem({ ...request, roomy }), request, expected);
    if (lines && says(lines, request, expected)) return lines;
  }
  return evenly(request, expected);
}

interface Expected {
  readonly note: NoteReading;
  readonly place: NotePlace;
  /** From the start of the passage. */
  readonly onset: Fraction;
}

function expectedNotes({ system, firstBar, lastBar, place }: RewriteRequest): Expected[] {
  const { notes, bars } = system.reading;
  const start = bars[firstBar]?.onset ?? ZERO;
  return notes.flatMap((note, i) => {
    const chosen = note.bar >= firstBar && note.bar <= lastBar ? place(i) : undefined;
    return chosen ? [{ note, place: chosen, onset: subtract(note.onset, start) }] : [];
  });
}

function read(lines: readonly string[], { header, position }: RewriteRequest): SystemReading {
  const parsed: ParsedLine[] = lines.map(parseLine);
  return readSystem(parsed, header, position);
}

/** Whether lines say what was asked for, note by note. */
function says(lines: readonly string[], request: RewriteRequest, expected: readonly Expected[]): boolean {
  const { notes, bars } = read(lines, request);
  const { bars: old } = request.system.reading;
  if (bars.length !== request.lastBar - request.firstBar + 1 || notes.length !== expected.length)
    return false;
  if (!bars.every((bar, i) => equal(bar.length, old[request.firstBar + i]?.length ?? ZERO))) return false;
  return pairs(notes, expected).every(([note, wanted]) => note !== undefined && isAsWanted(note, wanted));
}

/** Written notes beside the ones asked for, string by string in the order of time. */
function pairs(
  notes: readonly NoteReading[],
  expected: readonly Expected[],
): [NoteReading | undefined, Expected][] {
  const next = new Map<number, NoteReading[]>();
  for (const note of [...notes].sort((a, b) => a.start - b.start)) {
    const list = next.get(note.string);
    if (list) list.push(note);
    else next.set(note.string, [note]);
  }
  const inOrder = [...expected].sort((a, b) => a.note.column - b.note.column || a.note.start - b.note.start);
  return inOrder.map((wanted) => [next.get(wanted.place.string)?.shift(), wanted]);
}

function isAsWanted(note: NoteReading, { note: old, place, onset }: Expected): boolean {
  return (
    note.kind === old.kind &&
    note.ghost === old.ghost &&
    (note.kind === 'muted' || note.kind === 'natural-harmonic' || note.fret === place.fret) &&
    (note.touched === undefined || Math.abs(note.touched - (place.touched ?? old.touched ?? 0)) < 0.01) &&
    equal(note.onset, onset) &&
    note.techniques.map((t) => t.kind).join() === old.techniques.map((t) => t.kind).join()
  );
}

/** The lines under a count row that pins every onset; undefined when a count cannot. */
function withCount(
  lines: readonly string[],
  request: RewriteRequest,
  expected: readonly Expected[],
): string[] | undefined {
  const reading = read(lines, request);
  const { bars: old } = request.system.reading;
  if (reading.bars.length !== request.lastBar - request.firstBar + 1) return undefined;
  let onset = ZERO;
  const bars = reading.bars.map((bar, i) => {
    const was = old[request.firstBar + i];
    const length = was?.length ?? bar.length;
    const counted = {
      start: bar.startColumn,
      end: bar.endColumn,
      onset,
      length,
      pickup: was?.pickup ?? false,
    };
    onset = add(onset, length);
    return counted;
  });
  const onsets = new Map<number, { column: number; time: Fraction; bar: number; end: number }>();
  for (const [note, wanted] of pairs(reading.notes, expected)) {
    if (!note) return undefined;
    const bar = wanted.note.bar - request.firstBar;
    const time = subtract(wanted.onset, bars[bar]?.onset ?? ZERO);
    const known = onsets.get(note.column);
    if (known && !equal(known.time, time)) return undefined;
    onsets.set(note.column, {
      column: note.column,
      time,
      bar,
      end: Math.max(known?.end ?? 0, note.column + note.numberEnd - note.numberStart - 1),
    });
  }
  const body = writeCount(request.header.meter, bars, [...onsets.values()]);
  if (body === undefined) return undefined;
  const rest = lines.filter((line) => {
    const parsed = parseLine(line);
    return !(parsed.kind === 'row' && parsed.row === 'count');
  });
  return setUnder('count', body, rest);
}

/** Puts a row on top of lines, its first bar line over theirs. */
function setUnder(word: string, body: string, lines: readonly string[]): string[] {
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

/** A layout in which every column is worth the same time, as wide as its numbers need. */
function evenly(request: RewriteRequest, expected: readonly Expected[]): string[] | undefined {
  const { columnTimes, bars } = request.system.reading;
  const start = bars[request.firstBar]?.onset ?? ZERO;
  const parts = [...expected.map(({ onset }) => onset.d), ...bars.map((bar) => bar.length.d)].reduce(
    leastCommonMultiple,
    1,
  );
  for (let per = parts; per <= MOST_COLUMNS * parts && per <= 384; per += parts) {
    const floor = (column: number): number => {
      const time = subtract(columnTimes[column] ?? ZERO, start);
      const bar = bars.findIndex((b) => column < b.endColumn);
      const before = (bar < 0 ? bars.length : bar) - request.firstBar;
      // Each bar sign takes a column of its own.
      return Math.floor((time.n * per) / time.d) + before + 1;
    };
    const printed = printSystem({
      ...request,
      roomy: false,
      floor: (column) => (column <= (bars[request.firstBar]?.startColumn ?? 0) - 1 ? 0 : floor(column)),
    });
    const lines = withCount(printed, request, expected);
    if (lines && says(lines, request, expected)) return lines;
  }
  return undefined;
}

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y) [x, y] = [y, x % y];
  return (a / x) * b;
}
