import { fraction } from '../../music/fraction';
import { barLength, isCompound, type Meter } from '../../music/meter';
import { formatNoteName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { writeCount } from '../../notation/time/writeCount';
import { beatsOf, type Layout } from './layout';
import type { LayoutRow } from './startAnswer';

/** An empty system. */
export interface EmptySystem {
  readonly lines: readonly string[];
  /** The first cell of string 1: its line within the system, and the character. */
  readonly cell: { readonly line: number; readonly character: number };
}

/**
 * Lays out a system with nothing on its strings: a line for each string of the tuning in force, string 1 on top, and
 * the rows above them, all bar signs in the same columns.
 * @param prefixes what stands before the bars of each string, top line first; the notes of the strings where left out
 */
export function emptySystem(
  header: Header,
  layout: Layout,
  prefixes: readonly string[] = notesBefore(header),
): EmptySystem {
  const room = Math.max(...prefixes.map(({ length }) => length), ...layout.rows.map((row) => row.length + 1));
  const perBar = layout.columns * beatsOf(header.meter);
  const strings = `|${`${'-'.repeat(perBar)}|`.repeat(layout.bars)}`;
  const rows = layout.rows.map((row) => row.padEnd(room) + rowBody(row, header.meter, layout));
  const lines = [...rows, ...prefixes.map((prefix) => prefix.padEnd(room) + strings)];
  return { lines, cell: { line: rows.length, character: room + 1 } };
}

function notesBefore({ tuning }: Header): readonly string[] {
  const labels = tuning.strings
    .map(({ pitches }) => pitches.map(({ name }) => formatNoteName(name)).join('/'))
    .reverse();
  const width = Math.max(...labels.map(({ length }) => length));
  return labels.map((label) => `${label.padEnd(width)} `);
}

function rowBody(row: LayoutRow, meter: Meter, { bars, columns }: Layout): string {
  const perBar = columns * beatsOf(meter);
  const empty = `|${`${' '.repeat(perBar)}|`.repeat(bars)}`;
  return row === 'count' ? (counted(meter, bars, columns) ?? empty) : empty;
}

/** A count of every note that the meter counts; of the dotted beats alone where they have no room for more. */
function counted(meter: Meter, bars: number, columns: number): string | undefined {
  const perBar = columns * beatsOf(meter);
  const length = barLength(meter);
  const placed = Array.from({ length: bars }, (_, bar) => ({
    start: 1 + bar * (perBar + 1),
    end: (bar + 1) * (perBar + 1),
    onset: fraction(length.n * bar, length.d),
    length,
    pickup: false,
  }));
  const onsets = (count: number): { column: number; bar: number; time: ReturnType<typeof fraction> }[] =>
    placed.flatMap(({ start }, bar) =>
      Array.from({ length: count }, (_, i) => ({
        column: start + (i * perBar) / count,
        bar,
        time: fraction(length.n * i, length.d * count),
      })),
    );
  const all = perBar % meter.upper === 0 ? writeCount(meter, placed, onsets(meter.upper)) : undefined;
  return all ?? (isCompound(meter) ? writeCount(meter, placed, onsets(beatsOf(meter))) : undefined);
}
