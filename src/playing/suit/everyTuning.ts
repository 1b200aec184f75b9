import { playPassage } from '../hand/handSearch';
import { moved } from '../transposable';
import { describe, targetFor } from './describe';
import { cleanCost, compareRanks, type Rank } from './order';
import { namedTunings, retuned, retuningEffort, stepsOnOffer, transpositionsOf } from './retunings';
import type { Suited, SuitAnswer, SuitRequest, SuitStep } from './suitAnswer';

interface Candidate extends Rank {
  readonly steps: readonly number[];
}

/**
 * The plain way: every tuning worked out with the hand's own search, one by one. It is what `suit` is held against, and
 * serves where the bound has nothing to say.
 */
export function* everyTuning(request: SuitRequest): Generator<SuitStep, SuitAnswer> {
  const keys = transpositionsOf(request);
  const named: Suited[] = [];
  const tunings = namedTunings(request);
  for (const tuning of tunings) {
    named.push(
      keys.map((by) => describe(request, tuning, by)).reduce((a, b) => (compareSuited(b, a) < 0 ? b : a)),
    );
    yield { done: named.length, total: tunings.length, phase: 'named' };
  }
  const offers = stepsOnOffer(request);
  const total = offers.reduce((product, offer) => product * offer.length, keys.length);
  const found: Candidate[] = [];
  let done = 0;
  for (const halfSteps of keys) {
    const notes = request.notes.map((note) => moved(note, halfSteps));
    for (const steps of everyChoice(offers)) {
      const tuning = retuned(request.start, steps);
      const [answer] = playPassage(notes, targetFor(request, tuning), {
        ...request.options,
        alternatives: 1,
      });
      done++;
      if (answer?.unplaced.length === 0) {
        const effort = retuningEffort(request.start, tuning);
        const rank = { stepsOfRetuning: effort.steps, stringsChanged: effort.changed, halfSteps };
        found.push({ steps, cost: cleanCost(answer.cost), ...rank });
      }
      yield { done, total, phase: 'retunings' };
    }
  }
  found.sort(compareRanks);
  const suited = (candidate: Candidate): Suited =>
    describe(request, retuned(request.start, candidate.steps), candidate.halfSteps);
  const byStringsChanged = Array.from({ length: offers.length + 1 }, (_, changed) => {
    const first = found.find((candidate) => candidate.stringsChanged === changed);
    return first ? [{ changed, suited: suited(first) }] : [];
  }).flat();
  const here = describe(request, request.start, 0);
  return {
    here: here.answer && here,
    named: named.sort(compareSuited),
    best: found.slice(0, request.keep).map(suited),
    byStringsChanged,
    evaluated: found.length,
    unplayable: total - found.length,
    ruledOut: 0,
    total,
  };
}

/** By the same order as candidates; what cannot be played stands last. */
export function compareSuited(a: Suited, b: Suited): number {
  return compareRanks({ ...a.why, ...a }, { ...b.why, ...b });
}

/** Every way to take one of each, the first string slowest. */
function* everyChoice(offers: readonly (readonly number[])[], at = 0): Generator<number[]> {
  const offer = offers[at];
  if (!offer) {
    yield [];
    return;
  }
  for (const first of offer) for (const rest of everyChoice(offers, at + 1)) yield [first, ...rest];
}
