import type { EarCheck } from '../tuningFrets';
import type { TuningString } from '../tuning';
import { earCheckFor, type NumberedString, type RatedCheck } from './earCheckFor';
import type { StringChange } from './stringChanges';

/**
 * How hard a string pulls at a pitch, a course with both its strings; any unit, the same for all.
 * T = μ(2Lf)² (Mersenne, Taylor): for one string it grows with the square of the frequency.
 */
export type PullOf = (string: TuningString, number: number) => number;

/** One string on the way to another tuning. */
export interface RetuningStep {
  readonly change: StringChange;
  /** How to hear that it is there, by strings that are in tune by then; undefined where none tells it. */
  readonly check: EarCheck | undefined;
  /** The whole set's pull after the step. */
  readonly pull: number;
}

/** The way from one tuning to another. */
export interface RetuningWay {
  readonly steps: readonly RetuningStep[];
  /** The whole set's pull before the first step. */
  readonly start: number;
}

/** A check that no string gives: it comes after every other. */
const NO_CHECK = 100;

/**
 * An order of single-string steps in which at no step the whole set pulls harder than at the start or at the end,
 * whichever is more, nor any string harder than at its own ends: whatever goes lower or comes off comes first, strings
 * that are exchanged next, whatever goes higher or is added last. Among those it is the order in which each string can
 * best be heard against one that is in tune already; of equals the highest number first.
 * @param changes every string, as `stringChanges` has them
 * @param frets how many the neck has
 * @example retuningOrder(stringChanges(standard, openG), pullOf, 22).steps.map(({ change }) => change.number) // [6, 5, 1]
 */
export function retuningOrder(changes: readonly StringChange[], pullOf: PullOf, frets: number): RetuningWay {
  const pulls = changes.map((change) => endsOf(change, pullOf));
  const left = changes.flatMap((change, index) => (change.kind === 'stays' ? [] : [index]));
  const tuned: NumberedString[] = changes.flatMap(({ kind, number, to }) =>
    kind === 'stays' && to ? [{ number, string: to }] : [],
  );
  const phaseOf = (index: number): number => {
    const { before = 0, after = 0 } = pulls[index] ?? {};
    return changes[index]?.kind === 'exchange' ? 1 : after <= before ? 0 : 2;
  };
  const start = pulls.reduce((sum, { before }) => sum + before, 0);
  let pull = start;
  const steps: RetuningStep[] = [];
  while (left.length > 0) {
    let next: { at: number; rated: RatedCheck | undefined; cost: number } | undefined;
    for (const [at, index] of left.entries()) {
      const change = changes[index];
      if (!change) continue;
      const rated = change.to && earCheckFor({ number: change.number, string: change.to }, tuned, frets);
      const cost = phaseOf(index) * 1000 + (change.kind === 'off' ? 0 : (rated?.cost ?? NO_CHECK));
      if (!next || cost < next.cost) next = { at, rated, cost };
    }
    if (!next) break;
    const [index = 0] = left.splice(next.at, 1);
    const change = changes[index];
    const ends = pulls[index];
    if (!change || !ends) break;
    pull += ends.after - ends.before;
    if (change.to) tuned.push({ number: change.number, string: change.to });
    steps.push({ change, check: next.rated?.check, pull });
  }
  return { steps, start };
}

/** A string that is exchanged is taken to pull as hard as the one that was there: it is made for its pitch. */
function endsOf(
  { from, to, kind, number }: StringChange,
  pullOf: PullOf,
): { readonly before: number; readonly after: number } {
  const before = from ? pullOf(from, number) : 0;
  if (kind === 'exchange') return { before, after: before };
  return { before, after: to ? pullOf(to, number) : 0 };
}
