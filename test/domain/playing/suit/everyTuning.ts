import { playPassage } from '../../../../src/playing/hand/handSearch';
import { targetFor } from '../../../../src/playing/suit/describe';
import { retuned } from '../../../../src/playing/suit/retunings';
import type { SuitRequest } from '../../../../src/playing/suit/suit';
import { moved } from '../../../../src/playing/transposable';

/** One tuning worked out with the hand's own search. */
export interface Known {
  readonly steps: readonly number[];
  readonly halfSteps: number;
  readonly cost: number;
}

/**
 * The oracle of `suit`: every tuning worked out with the hand's own search, one by one, no bound, no memo, no order of
 * its own. Infinity where a note would be left out.
 */
export function everyTuning(
  request: SuitRequest,
  steps: readonly (readonly number[])[],
  transpositions: readonly number[],
): Known[] {
  const known: Known[] = [];
  for (const halfSteps of transpositions) {
    const notes = request.notes.map((note) => moved(note, halfSteps));
    for (const choice of everyChoice(steps)) {
      const target = targetFor(request, retuned(request.start, choice));
      const [answer] = playPassage(notes, target, {
        ...request.options,
        objective: 'total',
        alternatives: 1,
      });
      const cost = answer?.unplaced.length === 0 ? answer.cost : Infinity;
      known.push({ steps: choice, halfSteps, cost });
    }
  }
  return known;
}

/** Every way to take one of each. */
export function everyChoice(offers: readonly (readonly number[])[]): number[][] {
  return offers.reduce<number[][]>(
    (ways, offer) => ways.flatMap((way) => offer.map((by) => [...way, by])),
    [[]],
  );
}
