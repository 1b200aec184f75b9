import { add, compare, fraction, type Fraction } from '../../music/fraction';
import type { System, TabDocument } from '../../notation/tabDocument';
import type { ServiceError } from '../serviceApi';
import { momentAt } from '../hover/column';
import { columnAt } from '../locate';
import { systemOf } from '../typing/putFrets';
import { cellsOf, fillOf, isEmpty, recut, withBarPutOn } from './barCells';
import { barListOf, printBars, type BarList } from './barList';
import type { ColumnsDone } from './columns';
import type { ColumnsRequest } from './columnsRequest';
import { placeOf, spotAt } from './cursorSpot';
import { isShifted, STAYS } from './shiftedSounds';

/**
 * Moves everything from the cursor on a beat later, over the bar signs of its system, or a beat sooner where a beat
 * of silence stands at the cursor. Bars keep their lengths; nothing falls off: a bar is put on where the last one is full.
 * Where nothing may go over a bar sign, only the rest of the bar moves, and a full bar is refused.
 */
export function moveBeat(
  document: TabDocument,
  system: System,
  { action, range, overBar = 'push' }: ColumnsRequest,
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
  const number = document.placeOf(system).firstBar + bar;
  const start = list.bars.slice(0, bar).reduce((sum, { width }) => sum + width, 0);
  const all = list.bars.reduce((sum, { width }) => sum + width, 0);
  const stays = overBar === 'refuse';
  const stretch: Stretch = {
    from: start + column - own.startColumn,
    to: stays ? start + (list.bars[bar]?.width ?? 0) : all,
    beat,
    full: stays
      ? `Something stands in the last beat of bar ${number} and would go over the bar sign: clear it first, or let beats go on into the next bar.`
      : undefined,
  };
  const shifted = later ? pushed(list, stretch) : pulled(list, stretch);
  if (typeof shifted === 'string') return { error: shifted };
  const lines = printBars(shifted);
  const from = momentAt(system, column);
  const until = stays ? add(own.onset, own.length) : undefined;
  const goes = (onset: Fraction): boolean =>
    compare(onset, from) >= 0 && (until === undefined || compare(onset, until) < 0);
  const step = fraction(later ? 4 : -4, meter.lower);
  const due = (onset: Fraction): Fraction => (goes(onset) ? add(onset, step) : onset);
  const one = ({ onset }: { readonly onset: Fraction }): Fraction => due(onset);
  if (!isShifted(system, systemOf(system, lines), { note: one, stop: one, mark: due, mutesFollow: true }))
    return {
      error:
        'Notes would begin at other times than a beat away, so nothing was changed: write the count of these bars, and leave even columns for every beat.',
    };
  const follows = stays ? 'the rest of the bar' : 'what follows';
  return {
    from: system.firstLine,
    count: system.lines.length,
    lines,
    said: later
      ? `A beat is put in, in bar ${number}; ${follows} stands a beat later.`
      : `A beat is taken out of bar ${number}; ${follows} stands a beat sooner.`,
    notesIn: system.reading.notes.length,
    moved: system.reading.notes.filter(({ onset }) => goes(onset)).length,
    goesOn: placeOf(system, [lines], system.firstLine, spotAt(system, range.start)),
  };
}

/** Cells that move, counted through all bars without their signs. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Columns of a beat. */
  readonly beat: number;
  /** What is said where the stretch is full; undefined when a bar may be put on. */
  readonly full: string | undefined;
}

function pushed(list: BarList, { from, to, beat, full }: Stretch): BarList | string {
  const isFull = list.lines.some(
    ({ kind, key }) =>
      !STAYS.has(key) && !isEmpty(cellsOf(list, key, kind).slice(Math.max(from, to - beat), to)),
  );
  if (isFull && full !== undefined) return full;
  const wide = isFull ? withBarPutOn(list) : list;
  const added = isFull ? (wide.bars.at(-1)?.width ?? 0) : 0;
  return recut(wide, (cells, { kind, key }) =>
    STAYS.has(key)
      ? cells
      : cells.slice(0, from) +
        (fillOf(kind).repeat(beat) + cells.slice(from)).slice(0, to + added - from) +
        cells.slice(to + added),
  );
}

function pulled(list: BarList, { from, to, beat }: Stretch): BarList | string {
  if (to - from < beat)
    return 'Less than a beat follows the cursor there, so none can be taken out: place it where the beat begins.';
  const isFull = list.lines.some(
    ({ kind, key }) => !STAYS.has(key) && !isEmpty(cellsOf(list, key, kind).slice(from, from + beat)),
  );
  if (isFull) return 'Something stands in the beat at the cursor, so it stays: clear it first.';
  return recut(list, (cells, { kind, key }) =>
    STAYS.has(key)
      ? cells
      : cells.slice(0, from) + cells.slice(from + beat, to) + fillOf(kind).repeat(beat) + cells.slice(to),
  );
}
