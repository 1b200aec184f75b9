import { Front } from './front';
import type { Judge } from './judge';
import type { Candidate } from './order';
import { countOf, familyOf, type Space } from './space';
import { told } from './told';
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
  /** For each string the half steps from the start, less those of the transposition. */
  readonly relative: readonly number[];
  readonly keys: number;
  readonly bound: number;
}

/**
 * First a lower bound for every family, then the families in its order, until no bound can reach what has been found:
 * the same as working out every one.
 */
export function* bestRetunings(
  request: SuitRequest,
  space: Space,
  judge: Judge,
  slices: Slices,
): Generator<SuitStep, Found> {
  const over = (): boolean => slices.over();
  const total = space.size;
  let evaluated = 0;
  let unplayable = 0;
  let ruledOut = 0;
  let bounded = 0;
  // Each is looked at twice: for its bound, and for good.
  const step = (): SuitStep => ({
    done: Math.floor((bounded + evaluated + unplayable + ruledOut) / 2),
    total,
    phase: 'retunings',
  });
  const hopeful: Hopeful[] = [];
  for (const { relative, keys } of familiesOf(space)) {
    const bound = yield* told(judge.lowerBound(relative, over), step, slices);
    bounded += countOf(keys);
    if (bound === Infinity) unplayable += countOf(keys);
    else hopeful.push({ relative: [...relative], keys, bound });
    if (over()) {
      yield step();
      slices.again();
    }
  }
  hopeful.sort((a, b) => a.bound - b.bound);
  const front = new Front(request.keep);
  for (const { relative, keys, bound } of hopeful) {
    const family = familyOf(relative, keys, space);
    const bar = front.bar(family);
    const beyond = bound > bar;
    if (!beyond || judge.chained) yield* told(judge.lowerBound(relative, over), step, slices);
    if (!judge.plays()) unplayable += family.length;
    else if (beyond) ruledOut += family.length;
    else {
      const cost = yield* told(judge.least(bar, over), step, slices);
      if (cost <= bar && cost < Infinity) front.take(family, cost);
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
  relative: number[] = [],
  keys = space.allKeys,
): Generator<{ readonly relative: readonly number[]; readonly keys: number }> {
  const offers = space.offers[relative.length];
  if (!offers) {
    yield { relative, keys };
    return;
  }
  for (const offer of offers) {
    const both = keys & offer.keys;
    if (both === 0) continue;
    relative.push(offer.relative);
    yield* familiesOf(space, relative, both);
    relative.pop();
  }
}
