import { stepsFrom } from '../../instrument/tuningFormat';
import type { Tuning } from '../../instrument/tuning';
import { UNIT } from '../hand/frame';
import { describe, ofCost } from './describe';
import type { Judge } from './judge';
import { compareRanks } from './order';
import { namedTunings, transpositionsOf } from './retunings';
import type { Slices } from './slices';
import type { Space } from './space';
import { told } from './told';
import type { Suited, SuitRequest, SuitStep } from './suitAnswer';

/** A named tuning, and as a retuning of the start where it is one. */
export interface Named {
  readonly tuning: Tuning;
  /** For each transposition the half steps of each string from the start, less those of the transposition. */
  readonly relative: readonly (readonly number[])[] | undefined;
}

/** What a named tuning costs in the key that suits it best, in millionths. */
interface Found {
  readonly cost: number;
  readonly halfSteps: number;
  readonly way: readonly number[] | undefined;
}

/** The named tunings of the instrument. */
export function namedOf(request: SuitRequest): Named[] {
  return namedTunings(request).map((tuning) => {
    const steps = retuningTo(request.start, tuning);
    const relative = steps && transpositionsOf(request).map((by) => steps.map((step) => step - by));
    return { tuning, relative };
  });
}

/** What the strings must be judged at: the offers of a space, and the named tunings in every key. */
export function offersFor(space: Space, named: readonly Named[]): number[][] {
  return space.offers.map((offers, index) => {
    const all = new Set(offers.map(({ relative }) => relative));
    for (const { relative } of named) for (const steps of relative ?? []) all.add(steps[index] ?? 0);
    return [...all];
  });
}

/** The named tunings, easiest first, each in the key that suits it best; the first of them described in full. */
export function* rankNamed(
  request: SuitRequest,
  named: readonly Named[],
  judge: Judge,
  slices: Slices,
): Generator<SuitStep, Suited[]> {
  const keys = transpositionsOf(request);
  const over = (): boolean => slices.over();
  const ranked: Suited[] = [];
  const found = new Map<Suited, Found>();
  const step = (): SuitStep => ({ done: ranked.length, total: named.length, phase: 'named' });
  for (const { tuning, relative } of named) {
    let best: Suited | undefined;
    let least: Found = { cost: Infinity, halfSteps: 0, way: undefined };
    for (const [at, halfSteps] of keys.entries()) {
      const steps = relative?.[at];
      if (steps) {
        const bound = yield* told(judge.lowerBound(steps, over), step, slices);
        if (bound >= least.cost || !judge.plays()) continue;
        const cost = yield* told(judge.least(least.cost, over), step, slices);
        if (cost < least.cost) least = { cost, halfSteps, way: judge.wayFound() };
      } else {
        const suited = describe(request, tuning, halfSteps);
        if (!best || compareSuited(suited, best) < 0) best = suited;
      }
      if (over()) {
        yield step();
        slices.again();
      }
    }
    best ??= ofCost(request, tuning, least.halfSteps, least.cost / UNIT);
    found.set(best, least);
    ranked.push(best);
  }
  ranked.sort(compareSuited);
  for (const [at, suited] of ranked.slice(0, request.keep).entries()) {
    const { tuning, halfSteps, cost, answer } = suited;
    if (cost < Infinity && !answer) {
      const way = found.get(suited)?.way;
      ranked[at] = describe(request, tuning, halfSteps, way && judge.placements(way));
    }
    yield step();
    slices.again();
  }
  return ranked;
}

/** By the order of `compareRanks`; what cannot be played stands last. */
function compareSuited(a: Suited, b: Suited): number {
  return compareRanks({ ...a.why, ...a }, { ...b.why, ...b });
}

/** The half steps that make one tuning the other, if nothing but whole half steps lies between them. */
function retuningTo(start: Tuning, tuning: Tuning): number[] | undefined {
  if (start.strings.length !== tuning.strings.length) return undefined;
  const alike = start.strings.every((string, index) => {
    const other = tuning.strings[index];
    const by = (other?.pitches[0].midi ?? NaN) - string.pitches[0].midi;
    return string.firstFret === other?.firstFret && Math.abs(by - Math.round(by)) < 1e-6;
  });
  return alike ? stepsFrom(start, tuning).map((by) => Math.round(by ?? 0)) : undefined;
}
