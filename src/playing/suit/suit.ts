import { bestRetunings } from './bestRetunings';
import { describe } from './describe';
import { Judge } from './judge';
import type { Candidate } from './order';
import { namedOf, offersFor, rankNamed } from './rankNamed';
import { retuned, stepsOnOffer, transpositionsOf } from './retunings';
import { Slices } from './slices';
import { spaceOf } from './space';
import type { SuitAnswer, Suited, SuitRequest, SuitStep } from './suitAnswer';

export type { SuitAnswer, SuitRequest, SuitStep, Suited, SuitedWhy } from './suitAnswer';
export { stringBears } from './stringBears';

/** What is taken where nothing is said: two half steps up or down, at pitch, the ten best. */
export const USUAL_SUIT = { within: 2, anyKey: false, keep: 10 } as const;

/**
 * Which tuning suits a passage: the named tunings of the instrument ranked by the hand's least cost, and the best of
 * all retunings of each string within some half steps and within what the string bears. Best for this cost, this
 * passage, these limits: the same answer as working out every one. Ties go to the fewest steps of retuning.
 *
 * Works in slices of some 10 ms: each `next()` works one slice, so that a caller can show progress, answer others
 * between, or stop for good by not calling again.
 * @example
 * const search = suit(request);
 * let step = search.next();
 * while (!step.done) step = search.next();
 * step.value.best[0]?.tuning
 */
export function* suit(asked: SuitRequest): Generator<SuitStep, SuitAnswer> {
  const request: SuitRequest = {
    ...asked,
    options: { ...asked.options, objective: 'total', alternatives: 1 },
  };
  const slices = new Slices();
  const space = spaceOf(stepsOnOffer(request), transpositionsOf(request));
  const names = namedOf(request);
  const judge = new Judge(request, offersFor(space, names));
  const named = yield* rankNamed(request, names, judge, slices);
  const found = yield* bestRetunings(request, space, judge, slices);
  const step: SuitStep = { done: found.total, total: found.total, phase: 'retunings' };
  const described = new Map<string, Suited>();
  const toDescribe = [...found.best, ...found.byStringsChanged];
  for (const candidate of toDescribe) {
    const key = keyOf(candidate);
    if (described.has(key)) continue;
    const { steps, halfSteps, cost } = candidate;
    const known = judge.easiest(
      steps.map((by) => by - halfSteps),
      cost,
    );
    described.set(key, describe(request, retuned(request.start, steps), halfSteps, known));
    yield step;
    slices.again();
  }
  const here = describe(request, request.start, 0);
  const suitedOf = (candidate: Candidate): Suited[] => {
    const suited = described.get(keyOf(candidate));
    return suited ? [suited] : [];
  };
  return {
    here: here.answer && here,
    named,
    best: found.best.flatMap(suitedOf),
    byStringsChanged: found.byStringsChanged.flatMap((candidate) =>
      suitedOf(candidate).map((suited) => ({ changed: candidate.stringsChanged, suited })),
    ),
    evaluated: found.evaluated,
    unplayable: found.unplayable,
    ruledOut: found.ruledOut,
    total: found.total,
  };
}

function keyOf({ steps, halfSteps }: Candidate): string {
  return `${steps.join(' ')} ${halfSteps}`;
}
