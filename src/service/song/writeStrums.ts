import type { Fraction } from '../../music/fraction';
import type { Header } from '../../notation/header';
import { usualLabel } from '../../notation/labels';
import { parseLine } from '../../notation/parseLine';
import type { ParsedLine, RowLine, RowMark, StringLine } from '../../notation/parsedLine';
import type { NotePlace } from '../../notation/print/pieces';
import { rewriteSystem } from '../../notation/print/rewriteSystem';
import type { SystemReading } from '../../notation/reading';
import { readSystem } from '../../notation/systemReading';
import type { System } from '../../notation/tabDocument';
import { labelWidth, stretchedSystem, type StretchedSystem } from './stretchedSystem';
import { strumColumns, type WantedColumn } from './strumColumns';

/** What one string does: a fret as it is written, `x` a muted stroke, `.` ends what rings. */
export type StrumCell = number | 'x' | '.';

/** What happens on the strings at one moment. */
export interface Strum extends WantedColumn {
  /** By the number players give a string; the others have nothing new. */
  readonly cells: ReadonlyMap<number, StrumCell>;
}

export interface StrumsToWrite {
  /** The system whose bars and rows are taken; what stands on its strings is not. */
  readonly system: System;
  /** The fields it will stand under. */
  readonly header: Header;
  /** In order of time. */
  readonly strums: readonly Strum[];
  readonly octaves: boolean;
  readonly keeps: (row: RowLine) => boolean;
  /** New text of a row's mark. */
  readonly rewrite: (row: RowLine, mark: RowMark) => string;
  /** When a mark of the `chords` row begins, where that is another time than the system's own reading. */
  readonly timeOf: (row: RowLine, mark: RowMark) => Fraction | undefined;
}

/** Columns are drawn out to as many at most. */
const MOST_STRETCH = 16;
/** So many widths at most are tried where none gives every time by itself. */
const MOST_ROOMY = 3;

/**
 * The lines of a system under whose rows strums are written on every string of the tuning. They have been read back:
 * every strum begins at its exact time, in columns as they are where these give it, else with more room, else under a
 * count row. Undefined when no way of writing says it.
 */
export function writeStrums(task: StrumsToWrite): string[] | undefined {
  for (const { stretched, columns } of waysToPlace(task)) {
    const lines = linesOf(task, stretched, columns);
    if (lines) return lines;
  }
  return undefined;
}

/** Columns to write in. */
interface Way {
  readonly stretched: StretchedSystem;
  readonly columns: readonly number[];
}

/**
 * The columns as they are, which a count row may have to pin: words are not torn apart for its sake. Then the fewest
 * columns that give every moment its own time, then the fewest that have room for all.
 */
function waysToPlace({ system, strums, keeps }: StrumsToWrite): Way[] {
  const found: Way[] = [];
  for (let by = 1; by <= MOST_STRETCH; by++) {
    const stretched = stretchedSystem(system, by, keeps);
    const placed = strumColumns(strums, stretched, (column) => stretched.body[column] === '-');
    if (!placed) continue;
    found.push({ stretched, columns: placed.columns });
    if (placed.exact) break;
  }
  const exact = found.pop();
  return exact ? [...found.slice(0, 1), exact, ...found.slice(1, MOST_ROOMY)] : [];
}

function linesOf(
  task: StrumsToWrite,
  stretched: StretchedSystem,
  columns: readonly number[],
): string[] | undefined {
  const { header, rewrite, system } = task;
  const lines = [...stretched.lines, ...stringLines(task, stretched, columns)];
  const position = { firstInPart: system.firstInPart, firstInSection: system.firstInSection };
  const read = readSystem(lines, header, position);
  if (read.bars.length !== system.reading.bars.length) return undefined;
  const cells = task.strums.reduce((sum, strum) => sum + strum.cells.size, 0);
  if (read.notes.length + read.stops.length !== cells) return undefined;
  const places = placesOf(read, task.strums, columns);
  const asked: System = { ...system, lines, header, reading: readingOf(task, stretched, read, columns) };
  const original = (row: RowLine): RowLine => {
    const line = system.lines[stretched.from[lines.indexOf(row)] ?? -1];
    return line?.kind === 'row' ? line : row;
  };
  const written = rewriteSystem({
    system: asked,
    firstBar: 0,
    lastBar: read.bars.length - 1,
    header,
    place: (index) => places[index],
    keepLabels: true,
    position,
    rewrite: (row, mark) => {
      const own = original(row);
      return rewrite(own, own.marks[row.marks.indexOf(mark)] ?? mark);
    },
  });
  return written && keepsMarks(task, written) ? written : undefined;
}

/** Whether every mark of the rows is there: one over another row's bar sign has no column to stand in. */
function keepsMarks({ system, keeps, rewrite }: StrumsToWrite, written: readonly string[]): boolean {
  const rowsOf = (lines: readonly ParsedLine[]): RowLine[] =>
    lines.filter((line): line is RowLine => line.kind === 'row' && line.row !== 'count');
  const wanted = rowsOf(system.lines)
    .filter(keeps)
    .map((row) => row.marks.map((mark) => rewrite(row, mark)).join(' '));
  const found = rowsOf(written.map(parseLine)).map(({ marks }) => marks.map(({ text }) => text).join(' '));
  // What covers columns grows with them.
  const some = (list: readonly string[]): string =>
    list
      .map((text) => text.replace(/-+(?= |$)/g, ''))
      .filter((text) => text !== '')
      .join('\n');
  return some(wanted) === some(found);
}

/** Lines that hold the place of what is to be written: one sign wide, as the reading of where they stand needs. */
function stringLines(
  { system, header, strums, octaves }: StrumsToWrite,
  { lines, body }: StretchedSystem,
  columns: readonly number[],
): ParsedLine[] {
  const { strings } = header.tuning;
  const written = new Map<number, StringLine>();
  if (system.header.tuning === header.tuning) {
    for (const { line, number } of system.reading.strings) {
      const own = system.lines[line];
      if (own?.kind === 'string') written.set(number, own);
    }
  }
  const numbers = strings.map((_, i) => i + 1);
  const labels = numbers.map(
    (number) =>
      written.get(number)?.label.text ?? usualLabel(header.tuning, strings.length - number, octaves),
  );
  const rows = lines.flatMap((line) => (line.kind === 'row' ? [line.bodyStart] : []));
  const own = [...written.values()].map(({ bodyStart }) => bodyStart);
  const start = Math.max(...rows, ...own, labelWidth(labels) + (written.size > 0 ? 0 : 1));
  return numbers.map((number, i) => {
    const cells = [...body];
    strums.forEach((strum, k) => {
      const cell = strum.cells.get(number);
      if (cell !== undefined) cells[columns[k] ?? 0] = typeof cell === 'number' ? '0' : cell;
    });
    const remark = written.get(number)?.remark;
    return parseLine((labels[i] ?? '').padEnd(start) + cells.join('') + (remark ? ` ${remark.text}` : ''));
  });
}

/** The place of each note of the lines that hold places. */
function placesOf(
  { notes }: SystemReading,
  strums: readonly Strum[],
  columns: readonly number[],
): (NotePlace | undefined)[] {
  return notes.map(({ column, string }) => {
    const cell = strums[columns.indexOf(column)]?.cells.get(string);
    return cell === undefined ? undefined : { string, fret: typeof cell === 'number' ? cell : 0 };
  });
}

/** What the lines are to say: the bars and rows of the system as it was, the strums at their times. */
function readingOf(
  { system, strums, timeOf }: StrumsToWrite,
  { times, from }: StretchedSystem,
  read: SystemReading,
  columns: readonly number[],
): SystemReading {
  const { bars, rows, length } = system.reading;
  const columnTimes = [...times];
  strums.forEach(({ time }, k) => (columnTimes[columns[k] ?? 0] = time));
  const onsetAt = (column: number, otherwise: Fraction): Fraction =>
    strums[columns.indexOf(column)]?.time ?? otherwise;
  return {
    ...read,
    bars: read.bars.map((bar, i) => {
      const { onset, length: own, pickup } = bars[i] ?? bar;
      return { ...bar, onset, length: own, pickup };
    }),
    notes: read.notes.map((note) => ({ ...note, onset: onsetAt(note.column, note.onset) })),
    stops: read.stops.map((stop) => ({ ...stop, onset: onsetAt(stop.column, stop.onset) })),
    rows: read.rows.map((row) => {
      const index = from[row.line];
      const before = rows.find(({ line }) => line === index);
      const line = system.lines[index ?? -1];
      return {
        ...row,
        marks: row.marks.map((mark, i) => {
          const own = line?.kind === 'row' ? line.marks[i] : undefined;
          const time = line?.kind === 'row' && own ? timeOf(line, own) : undefined;
          return { ...mark, onset: time ?? before?.marks[i]?.onset ?? mark.onset };
        }),
      };
    }),
    columnTimes,
    length,
  };
}
