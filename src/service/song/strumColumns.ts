import { equal, toNumber, type Fraction } from '../../music/fraction';
import type { StretchedSystem } from './stretchedSystem';

/** Where something is to be written on the strings. */
export interface WantedColumn {
  /** Quarter notes from the system's start. */
  readonly time: Fraction;
  /** Its column in the system as it is; undefined where none is given, as for a beat. */
  readonly column: number | undefined;
}

/** Columns between two numbers on one string, so that they do not run into one. */
const APART = 2;

/**
 * A new column for each moment, in ascending order, with a dash between any two.
 * @returns undefined where there is no room; `exact` when every moment has the column of its time
 */
export function strumColumns(
  wanted: readonly WantedColumn[],
  system: StretchedSystem,
  inBar: (column: number) => boolean,
): { readonly columns: readonly number[]; readonly exact: boolean } | undefined {
  const { times, at } = system;
  const fixed = wanted.map(({ column }) => (column === undefined ? undefined : at(column)));
  const columns: number[] = [];
  let exact = true;
  for (const [i, { time }] of wanted.entries()) {
    const from = i === 0 ? 0 : (columns[i - 1] ?? 0) + APART;
    const nextFixed = fixed.slice(i + 1).find((column) => column !== undefined);
    const own = fixed[i];
    const to = own ?? (nextFixed === undefined ? times.length - 2 : nextFixed - APART);
    const column = own ?? nearest(time, from, to, times, inBar);
    if (column === undefined || column < from || column > to) return undefined;
    if (!equal(times[column] ?? time, time)) exact = false;
    columns.push(column);
  }
  return { columns, exact };
}

/** Of columns whose times are as near the last, since padding has the time of its bar's start. */
function nearest(
  time: Fraction,
  from: number,
  to: number,
  times: readonly Fraction[],
  inBar: (column: number) => boolean,
): number | undefined {
  const wanted = toNumber(time);
  let best: number | undefined;
  let least = Infinity;
  for (let column = from; column <= to; column++) {
    if (!inBar(column)) continue;
    const distance = Math.abs(toNumber(times[column] ?? time) - wanted);
    if (distance > least + 1e-9) continue;
    [best, least] = [column, distance];
  }
  return best;
}
