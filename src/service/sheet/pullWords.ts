import type { SheetPull } from './sheetAnswer';

/** A change that a player need not think of (engineering value). */
const LITTLE = 0.005;

/**
 * How the set's pull changes on the way.
 * @param start before the first step, in the unit of `after`
 * @param after each step
 * @example pullAnswer(460, [440, 414], true).words // 'The set pulls 460 N before and 414 N after, 10 % less'
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
    return `The whole set pulls about ${change === 'as much' ? 'as much as before' : `${change} than before`}, if all strings weighed the same`;
  const before = Math.round(newtons.start);
  return `The whole set pulls ${before} N before and ${Math.round(newtons.end)} N after, ${change}`;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
