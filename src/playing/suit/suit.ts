import { bestRetunings } from './bestRetunings';
import { describe } from './describe';
import { compareRanks, type Candidate } from './order';
import { namedTunings, retuned, transpositionsOf } from './retunings';
import { Slices } from './slices';
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
  const named = yield* rankNamed(request, slices);
  const found = yield* bestRetunings(request, slices);
  const step: SuitStep = { done: found.total, total: found.total, phase: 'retunings' };
  const described = new Map<string, Suited>();
  const toDescribe = [...found.best, ...found.byStringsChanged];
  for (const candidate of toDescribe) {
    const key = keyOf(candidate);
    if (described.has(key)) continue;
    described.set(key, describe(request, retuned(request.start, candidate.steps), candidate.halfSteps));
    yield step;
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

/** The named tunings, easiest first, each in the key that suits it best. */
function* rankNamed(request: SuitRequest, slices: Slices): Generator<SuitStep, Suited[]> {
  const keys = transpositionsOf(request);
  const tunings = namedTunings(request);
  const ranked: Suited[] = [];
  for (const tuning of tunings) {
    let best: Suited | undefined;
    for (const halfSteps of keys) {
      const suited = describe(request, tuning, halfSteps);
      if (!best || compareSuited(suited, best) < 0) best = suited;
      if (slices.over()) {
        yield { done: ranked.length, total: tunings.length, phase: 'named' };
        slices.again();
      }
    }
    if (best) ranked.push(best);
  }
  return ranked.sort(compareSuited);
}

/** By the order of `compareRanks`; what cannot be played stands last. */
function compareSuited(a: Suited, b: Suited): number {
  return compareRanks({ ...a.why, ...a }, { ...b.why, ...b });
}

function keyOf({ steps, halfSteps }: Candidate): string {
  return `${steps.join(' ')} ${halfSteps}`;
}
