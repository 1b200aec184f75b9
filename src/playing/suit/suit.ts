import type { SuitAnswer, SuitRequest, SuitStep } from './suitAnswer';
import { everyTuning } from './everyTuning';

export type { SuitAnswer, SuitRequest, SuitStep, Suited, SuitedWhy } from './suitAnswer';
export { stringBears } from './stringBears';

/** What is taken where nothing is said: two half steps up or down, at pitch, the ten best. */
export const USUAL_SUIT = { within: 2, anyKey: false, keep: 10 } as const;

/**
 * Which tuning suits a passage: the named tunings of the instrument ranked by the hand's least cost, and the best of
 * all retunings of each string within some half steps and within what the string bears. The best for this cost, this
 * passage, these limits: the same as working out every one. Ties go to the fewest steps of retuning.
 *
 * Works in slices of some 10 ms: each `next()` works one slice, so that a caller can show progress, answer others
 * between, or stop for good by not calling again.
 * @example
 * const search = suit(request);
 * let step = search.next();
 * while (!step.done) step = search.next();
 * step.value.best[0]?.tuning
 */
export function* suit(request: SuitRequest): Generator<SuitStep, SuitAnswer> {
  return yield* everyTuning(request);
}
