import { Front } from './front';
import { Judge } from './judge';
import type { Candidate } from './order';
import { stepsOnOffer, transpositionsOf } from './retunings';
import { countOf, familyOf, spaceOf, type Space } from './space';
import type { Slices } from './slices';
import type { SuitRequest, SuitStep } from './suitAnswer';

/** The best retunings, and what became of the others. */
export interface Found {
  readonly best: readonly Candidate[];
  readonly byStringsChanged: readonly Candidate[];
  readonly evaluated: number;
  readonly unplayable: number;
  readonly ruledOut: number;
  readonly total: number;
}

/** A family of retunings that can be played as far as its bound tells. */
interface Hopeful {
  /** For each string the index of its offer. */
  readonly tuning: readonly number[];
  readonly keys: number;
  readonly bound: number;
}

/**
 * First a lower bound for every family, then the families in its order, until no bound can reach what has been found:
 * the same as working out every one.
 */
export function* bestRetunings(request: SuitRequest, slices: Slices): Generator<SuitStep, Found> {
  const space = spaceOf(stepsOnOffer(request), transpositionsOf(request));
  const judge = new Judge(
    request,
    space.offers.map((offers) => offers.map(({ relative }) => relative)),
  );
  const over = (): boolean => slices.over();
  const total = space.size;
  let evaluated = 0;
  let unplayable = 0;
  let ruledOut = 0;
  const step = (): SuitStep => ({ done: evaluated + unplayable + ruledOut, total, phase: 'retunings' });
  const hopeful: Hopeful[] = [];
  for (const { tuning, keys } of familiesOf(space)) {
    const bounding = judge.lowerBound(tuning, over);
    let result = bounding.next();
    while (!result.done) {
      yield step();
      slices.again();
      result = bounding.next();
    }
    if (result.value === Infinity) unplayable += countOf(keys);
    else hopeful.push({ tuning: [...tuning], keys, bound: result.value });
    if (over()) {
      yield step();
      slices.again();
    }
  }
  hopeful.sort((a, b) => a.bound - b.bound);
  const front = new Front(request.keep);
  for (const { tuning, keys, bound } of hopeful) {
    const relative = tuning.map((offer, index) => space.offers[index]?.[offer]?.relative ?? 0);
    const family = familyOf(relative, keys, space);
    const bar = front.bar(family);
    const beyond = bound > bar;
    if (!beyond || judge.chained) {
      const bounding = judge.lowerBound(tuning, over);
      let again = bounding.next();
      while (!again.done) {
        yield step();
        slices.again();
        again = bounding.next();
      }
    }
    if (!judge.plays()) unplayable += family.length;
    else if (beyond) ruledOut += family.length;
    else {
      const working = judge.least(bar, over);
      let result = working.next();
      while (!result.done) {
        yield step();
        slices.again();
        result = working.next();
      }
      if (result.value <= bar && result.value < Infinity) front.take(family, result.value);
      evaluated += family.length;
    }
    if (over()) {
      yield step();
      slices.again();
    }
  }
  const { best, byStringsChanged } = front;
  return { best, byStringsChanged, evaluated, unplayable, ruledOut, total };
}

/** Every family of a space; the same array each time. */
function* familiesOf(
  space: Space,
  tuning: number[] = [],
  keys = space.allKeys,
): Generator<{ readonly tuning: readonly number[]; readonly keys: number }> {
  const offers = space.offers[tuning.length];
  if (!offers) {
    yield { tuning, keys };
    return;
  }
  for (let at = 0; at < offers.length; at++) {
    const both = keys & (offers[at]?.keys ?? 0);
    if (both === 0) continue;
    tuning.push(at);
    yield* familiesOf(space, tuning, both);
    tuning.pop();
  }
}
