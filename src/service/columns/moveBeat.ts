import { add, compare, equal, fraction, type Fraction } from '../../music/fraction';
import type { NoteReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import type { ServiceError } from '../serviceApi';
import { momentAt } from '../hover/column';
import { columnAt } from '../locate';
import { systemOf } from '../typing/putFrets';
import { barListOf, emptyBar, PALM_MUTE, printBars, type Bar, type BarList } from './barList';
import type { ColumnsDone } from './columns';
import type { ColumnsRequest } from './columnsRequest';
import { isMuted } from './sameInBars';

/**
 * Moves everything from the cursor on a beat later, over the bar signs of its system, or a beat sooner where a beat
 * of silence stands at the cursor. Bars keep their lengths; nothing falls off: a bar is put on where the last one is full.
 */
export function moveBeat(
  document: TabDocument,
  system: System,
  { action, range }: ColumnsRequest,
): ColumnsDone | ServiceError {
  const column = columnAt(system, range.start);
  const bar = system.reading.bars.findIndex(
    ({ startColumn, endColumn }) => column !== undefined && column >= startColumn && column < endColumn,
  );
  const own = system.reading.bars[bar];
  if (column === undefined || !own) return { error: 'Place the cursor on a column between two bar signs.' };
  const { meter } = system.header;
  const beats = (own.length.n * meter.lower) / (own.length.d * 4);
  const beat = (own.endColumn - own.startColumn) / beats;
  if (!Number.isInteger(beat) || beat < 1)
    return { error: 'The columns of this bar do not divide into beats: put its columns right first.' };
  const list = barListOf(system);
  if (typeof list === 'string') return { error: list };
  const later = action === 'insertBeat';
  const offset =
    list.bars.slice(0, bar).reduce((sum, { width }) => sum + width, 0) + column - own.startColumn;
  const shifted = later ? pushed(list, offset, beat) : pulled(list, offset, beat);
  if (typeof shifted === 'string') return { error: shifted };
  const lines = printBars(shifted);
  const now = systemOf(system, lines);
  const from = momentAt(system, column);
  const step = fraction(later ? 4 : -4, meter.lower);
  if (!isShifted(system, now, from, step))
    return {
      error:
        'Notes would begin at other times than a beat away, so nothing was changed: write the count of these bars, and leave even columns for every beat.',
    };
  const moved = system.reading.notes.filter(({ onset }) => compare(onset, from) >= 0).length;
  const number = document.placeOf(system).firstBar + bar;
  return {
    from: system.firstLine,
    count: system.lines.length,
    lines,
    said: later
      ? `A beat is put in, in bar ${number}; what follows stands a beat later.`
      : `A beat is taken out of bar ${number}; what follows stands a beat sooner.`,
    notesIn: system.reading.notes.length,
    moved,
  };
}

/** Rows that pin times stay; every other line goes along. */
const STAYS = new Set(['count', 'ending']);

function pushed(list: BarList, offset: number, beat: number): BarList | string {
  const full = list.lines.some(({ kind, key }) => {
    const cells = cellsOf(list.bars, key, kind);
    return !STAYS.has(key) && !isEmpty(cells.slice(-beat));
  });
  const last = list.bars.at(-1);
  const bars = full && last ? [...list.bars, emptyBar(last)] : list.bars;
  return recut(
    { ...list, bars },
    (cells, fill) => cells.slice(0, offset) + fill.repeat(beat) + cells.slice(offset, cells.length - beat),
  );
}

function pulled(list: BarList, offset: number, beat: number): BarList | string {
  const full = list.lines.some(
    ({ kind, key }) =>
      !STAYS.has(key) && !isEmpty(cellsOf(list.bars, key, kind).slice(offset, offset + beat)),
  );
  if (full) return 'Something stands in the beat at the cursor, so it stays: clear it first.';
  return recut(
    list,
    (cells, fill) => cells.slice(0, offset) + cells.slice(offset + beat) + fill.repeat(beat),
  );
}

function recut(list: BarList, move: (cells: string, fill: string) => string): BarList {
  const cut = new Map<string, string[]>();
  for (const { kind, key } of list.lines) {
    const cells = cellsOf(list.bars, key, kind);
    const now = STAYS.has(key) ? cells : move(cells, kind === 'string' ? '-' : ' ');
    let at = 0;
    cut.set(
      key,
      list.bars.map(({ width }) => now.slice(at, (at += width))),
    );
  }
  const bars = list.bars.map((bar, i) => ({
    ...bar,
    cells: new Map([...cut].map(([key, cells]) => [key, cells[i] ?? ''])),
  }));
  return { ...list, bars };
}

function cellsOf(bars: readonly Bar[], key: string, kind: 'string' | 'row'): string {
  const fill = kind === 'string' ? '-' : ' ';
  return bars.map(({ cells, width }) => cells.get(key) ?? fill.repeat(width)).join('');
}

function isEmpty(cells: string): boolean {
  return /^[-–—─− ]*$/.test(cells);
}

function isShifted(old: System, now: System, from: Fraction, step: Fraction): boolean {
  const due = (onset: Fraction): Fraction => (compare(onset, from) >= 0 ? add(onset, step) : onset);
  const lines = (notes: readonly NoteReading[]): NoteReading[] =>
    [...notes].sort((a, b) => a.string - b.string || a.start - b.start);
  const before = lines(old.reading.notes);
  const after = lines(now.reading.notes);
  return (
    before.length === after.length &&
    before.every((note, i) => {
      const other = after[i];
      return (
        other?.string === note.string &&
        other.kind === note.kind &&
        other.fret === note.fret &&
        other.techniques.length === note.techniques.length &&
        isMuted(old, note) === isMuted(now, other) &&
        equal(other.onset, due(note.onset))
      );
    }) &&
    pinned(old, due).join('\n') === pinned(now, (onset) => onset).join('\n') &&
    old.reading.bars.every((bar, i) => {
      const other = now.reading.bars[i];
      return other !== undefined && equal(bar.length, other.length);
    })
  );
}

/** Stops and marks of rows with the times they are due at. */
function pinned({ reading }: System, due: (onset: Fraction) => Fraction): string[] {
  const at = (onset: Fraction): string => `${onset.n}/${onset.d}`;
  const stops = reading.stops.map(({ string, onset }) => `stop ${string} ${at(due(onset))}`);
  const marks = reading.rows
    .filter(({ row }) => !STAYS.has(row) && row !== PALM_MUTE)
    .flatMap(({ row, marks: all }) => all.map(({ text, onset }) => `${row} ${text} ${at(due(onset))}`));
  return [...stops, ...marks].sort();
}
