import { retune } from '../../instrument/retune';
import { formatTuningNotes, stepsFrom } from '../../instrument/tuningFormat';
import type { Tuning } from '../../instrument/tuning';
import { tuningsFor, type NamedTuning } from '../../instrument/tunings';
import { stringBears } from './stringBears';
import type { SuitRequest } from './suitAnswer';

/** Transpositions of `anyKey`, the smallest first: each key once, to the tritone up. */
const ANY_KEY = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6] as const;
const AT_PITCH = [0] as const;

/** What a string that only one of two tunings has counts in steps; as in `tuningDistance`. */
const MISSING = 12;

/** The transpositions asked for, the smallest first. */
export function transpositionsOf(request: SuitRequest): readonly number[] {
  return request.anyKey ? ANY_KEY : AT_PITCH;
}

/** Whether a string bears it, as the request says. */
export function limitsOf(request: SuitRequest): (string: number, halfSteps: number) => boolean {
  return request.limits ?? stringBears(request.start, request.instrument, request.target.scaleLength);
}

/** For each string the half steps on offer, the smallest first; 0 always is one of them. */
export function stepsOnOffer(request: SuitRequest): readonly (readonly number[])[] {
  const bears = limitsOf(request);
  return request.start.strings.map((_, index) => {
    const all = [0];
    for (let by = 1; by <= request.within; by++) all.push(-by, by);
    return all.filter((steps) => steps === 0 || bears(index, steps));
  });
}

/** The start retuned, named by its notes. */
export function retuned(start: Tuning, steps: readonly number[]): Tuning {
  if (steps.every((by) => by === 0)) return start;
  const tuning = { strings: retune(start.strings, steps), name: undefined, text: '' };
  return { ...tuning, text: formatTuningNotes(tuning) };
}

/** A named tuning as one in force. */
export function tuningOf(named: NamedTuning): Tuning {
  return { strings: named.strings, name: named.name, text: named.name };
}

/** The named tunings of the instrument as tunings in force, its usual one first. */
export function namedTunings(request: SuitRequest): readonly Tuning[] {
  return tuningsFor(request.instrument).map(tuningOf);
}

/** How far a tuning is from the start. */
export function retuningEffort(
  start: Tuning,
  tuning: Tuning,
): { readonly steps: number; readonly changed: number } {
  const all = stepsFrom(start, tuning);
  const lost = Math.max(0, start.strings.length - tuning.strings.length);
  return {
    steps: all.reduce<number>((sum, by) => sum + Math.abs(by ?? MISSING), 0) + lost * MISSING,
    changed: all.filter((by) => by !== 0).length + lost,
  };
}
