import { equal, type Fraction } from '../../music/fraction';
import { widthOfText } from '../../notation/columns';
import type { RowLine } from '../../notation/parsedLine';
import type { System } from '../../notation/tabDocument';
import type { PlannedName } from './planRow';

/** The lines of a system with its row of chords. */
export interface WrittenRow {
  readonly lines: readonly string[];
  /** Names that have no room over their columns. */
  readonly cramped: readonly PlannedName[];
  readonly added: number;
  /** Own names that gave way to others. */
  readonly replaced: number;
}

interface Placed {
  readonly text: string;
  readonly column: number;
  readonly planned: PlannedName;
}

/** The first row of chords of a system, with names or without. */
export function chordRowOf({ lines }: System): { readonly row: RowLine; readonly at: number } | undefined {
  const at = lines.findIndex((line) => line.kind === 'row' && line.row === 'chords');
  const row = lines[at];
  return row?.kind === 'row' ? { row, at } : undefined;
}

/** Writes planned names over the columns of their times: into the row that is there, else into one on top. */
export function withChordRow(system: System, names: readonly PlannedName[]): WrittenRow {
  const found = chordRowOf(system);
  const cramped: PlannedName[] = [];
  const placed: Placed[] = [];
  names.forEach((planned, i) => {
    const column = columnOf(system, planned);
    const next = names[i + 1];
    const room = (next ? columnOf(system, next) : undefined) ?? Infinity;
    const free = (placed.at(-1)?.column ?? -2) + widthOfText(placed.at(-1)?.text ?? '') + 1;
    // What a player wrote stands as it is; only new names must find room.
    const fits = column !== undefined && column >= free && column + widthOfText(planned.name) < room;
    if (column === undefined || (!fits && planned.mark?.text !== planned.name)) cramped.push(planned);
    if (column === undefined || (!fits && planned.mark === undefined)) return;
    const text = fits || !planned.mark ? planned.name : planned.mark.text;
    placed.push({ text, column, planned });
  });
  const added = placed.filter(({ planned }) => planned.mark === undefined).length;
  const replaced = placed.filter(({ planned: { mark }, text }) => mark && mark.text !== text).length;
  const bars = found ? found.row.bars.map(({ column, text }) => ({ column, text })) : barsOf(system);
  const body = bodyOf(placed, bars);
  const texts = system.lines.map(({ text }) => text);
  const same = placed.every(({ planned, text }) => planned.mark?.text === text);
  if (placed.length === 0 || (found && same)) return { lines: texts, cramped, added, replaced };
  if (found) {
    texts[found.at] = found.row.text.slice(0, found.row.bodyStart) + body;
    return { lines: texts, cramped, added, replaced };
  }
  return { lines: underNewRow(system, body), cramped, added, replaced };
}

function barsOf({ reading }: System): readonly { column: number; text: string }[] {
  return [
    { column: 0, text: '|' },
    ...reading.bars.map(({ endColumn, closeSign }) => ({
      column: endColumn,
      text: closeSign === '||' ? closeSign : '|',
    })),
  ];
}

/** A bar sign gives way to a name that reaches over it. */
function bodyOf(names: readonly Placed[], bars: readonly { column: number; text: string }[]): string {
  const covers = (name: Placed, column: number): boolean =>
    name.column <= column && column <= name.column + widthOfText(name.text);
  const shown = bars.filter(({ column }) => column === 0 || !names.some((name) => covers(name, column)));
  let at = 0;
  return [...names, ...shown]
    .sort((a, b) => a.column - b.column)
    .reduce((text, item) => {
      const gap = Math.max(0, item.column - at);
      at += gap + widthOfText(item.text);
      return text + ' '.repeat(gap) + item.text;
    }, '');
}

/** A player's own column; else the column of the notes that begin then, else the first one of that time. */
function columnOf({ reading }: System, { time, mark }: PlannedName): number | undefined {
  if (mark) return mark.column;
  const columns = reading.notes.filter(({ onset }) => equal(onset, time)).map(({ column }) => column);
  if (columns.length > 0) return Math.min(...columns);
  return firstColumnAt(reading, time);
}

function firstColumnAt({ columnTimes, bars }: System['reading'], time: Fraction): number | undefined {
  for (const { startColumn, endColumn } of bars)
    for (let column = startColumn; column < endColumn; column++) {
      const here = columnTimes[column];
      if (here && equal(here, time)) return column;
    }
  return undefined;
}

const WORD = 'chords ';

/** The row on top, under one that tells endings; all lines get room for its word where they have none. */
function underNewRow({ lines }: System, body: string): string[] {
  const first = lines.find((line) => line.kind === 'string');
  const [indent, start] = first?.kind === 'string' ? [first.label.start, first.bodyStart] : [0, 0];
  const more = Math.max(0, WORD.length - (start - indent));
  const rest = lines.map((line) =>
    line.kind === 'string' || line.kind === 'row'
      ? line.text.slice(0, line.bodyStart) + ' '.repeat(more) + line.text.slice(line.bodyStart)
      : line.text,
  );
  const at = lines.findIndex((line) => line.kind !== 'row' || line.row !== 'ending');
  const row = ' '.repeat(indent) + WORD.padEnd(start - indent + more) + body;
  return [...rest.slice(0, at), row, ...rest.slice(at)];
}
