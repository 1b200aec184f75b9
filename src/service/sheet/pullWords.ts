import { NEWTONS_PER_POUND } from '../../instrument/strings/tension';
import type { SheetPull } from './sheetAnswer';

/** A change that a player need not think of (engineering value). */
const LITTLE = 0.005;

/**
 * How the set's pull changes on the way.
 * @param start before the first step, in the unit of `after`
 * @param after each step
 * @example pullAnswer(460, [440, 414], true).words // 'The whole set pulls 460 N (103 lb) before and 414 N (93 lb) after, …'
 */
export function pullAnswer(start: number, after: readonly number[], inNewtons: boolean): SheetPull {
  const end = after.at(-1) ?? start;
  const share = (pull: number): number => (start > 0 ? Math.round((pull / start) * 1e4) / 1e4 : 1);
  const all = [start, ...after];
  const newtons = inNewtons ? { start: tenth(start), end: tenth(end) } : null;
  return {
    end: share(end),
    highest: share(Math.max(...all)),
    lowest: share(Math.min(...all)),
    newtons,
    words: after.length === 0 ? '' : words(share(end), newtons),
  };
}

function words(end: number, newtons: SheetPull['newtons']): string {
  const percent = Math.round(Math.abs(end - 1) * 100);
  const change = Math.abs(end - 1) < LITTLE ? 'as much' : `${percent} % ${end < 1 ? 'less' : 'more'}`;
  if (!newtons)
    return `The whole set pulls about ${change === 'as much' ? 'as much as before' : `${change} than before`}, if all its strings pull alike in the usual tuning`;
  return `The whole set pulls ${inUnits(newtons.start)} before and ${inUnits(newtons.end)} after, ${change}; at no step more than the greater of the two`;
}

function inUnits(newtons: number): string {
  return `${Math.round(newtons)} N (${Math.round(newtons / NEWTONS_PER_POUND)} lb)`;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
