import { isCompound, type Meter } from '../../music/meter';
import type { ServiceError } from '../serviceApi';
import { LAYOUT_ROWS, type LayoutRequest, type LayoutRow } from './startAnswer';

/** How an empty system is laid out. */
export interface Layout {
  readonly bars: number;
  /** Columns a beat; a beat of 6/8 and its like is dotted. */
  readonly columns: number;
  /** Each once, in the order in which they stand. */
  readonly rows: readonly LayoutRow[];
}

const BARS = 4;
const MOST_BARS = 16;
/** Numbers of columns a beat that are read exactly, whatever is written into them (notation, section 7). */
const COLUMNS: readonly number[] = [1, 2, 3, 4, 6, 8, 9, 12, 16, 24];
/** Columns of a bar beyond which fewer are given to a beat where nothing is said. */
const WIDEST = 64;

/** Beats of a bar: in 6, 9 or 12 over 8 or 16 dotted ones. */
export function beatsOf(meter: Meter): number {
  return isCompound(meter) ? meter.upper / 3 : meter.upper;
}

/** Room for sixteenths; in very long bars and under small lower notes one column for each lower note at least. */
function usualColumns(meter: Meter): number {
  let each = Math.max(1, 16 / meter.lower);
  while (each > 1 && each * meter.upper > WIDEST) each /= 2;
  return isCompound(meter) ? 3 * each : each;
}

/** The layout of a plain system in a meter. */
export function usualLayout(meter: Meter): Layout {
  return { bars: BARS, columns: usualColumns(meter), rows: [] };
}

/**
 * Takes a layout as it was asked for.
 * @returns one sentence where it cannot be laid out
 * @example layoutOf({ bars: 2 }, { upper: 4, lower: 4 }) // { bars: 2, columns: 4, rows: [] }
 */
export function layoutOf(request: LayoutRequest, meter: Meter): Layout | ServiceError {
  const { bars, columns, rows } = { ...usualLayout(meter), ...request };
  if (!Number.isInteger(bars) || bars < 1 || bars > MOST_BARS)
    return { error: `A system is laid out with 1 to ${MOST_BARS} bars, not ${bars}.` };
  const possible = columnsInMeter(meter);
  if (!possible.includes(columns)) {
    const beat = isCompound(meter) ? `a beat of ${meter.upper}/${meter.lower}, which is dotted,` : 'a beat';
    return { error: `Columns for ${beat} are one of ${possible.join(', ')}, not ${columns}.` };
  }
  return { bars, columns, rows: LAYOUT_ROWS.filter((row) => rows.includes(row)) };
}

/** The numbers of columns a beat that a meter can have; a dotted beat has three notes. */
function columnsInMeter(meter: Meter): readonly number[] {
  return isCompound(meter) ? COLUMNS.filter((columns) => columns % 3 === 0) : COLUMNS;
}
