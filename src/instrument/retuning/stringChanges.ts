import { cleanMidi } from '../retune';
import { stringNumber, type Tuning, type TuningString } from '../tuning';

/** What becomes of one string on the way from a tuning to another. */
export interface StringChange {
  /** Player's number, the same in both tunings. */
  readonly number: number;
  /** Undefined where the tuning has no such string. */
  readonly from: TuningString | undefined;
  readonly to: TuningString | undefined;
  readonly kind: ChangeKind;
  /** Half steps from before to after, of a course those of its first note; 0 unless the string is turned. */
  readonly halfSteps: number;
}

/**
 * `exchange`: too far to turn, another string has to be put on. A course whose two strings go opposite ways is `down`
 * or `up` by its first note, or by its second where the first one stays.
 */
export type ChangeKind = 'stays' | 'down' | 'up' | 'add' | 'off' | 'exchange';

/**
 * The most half steps that a string is turned up: 7 make its tension 2.2 times what it was, past what any string of a
 * usual set bears. Down an octave leaves a quarter of it, and the string no longer sounds. Engineering values.
 */
const MOST_UP = 6;
const MOST_DOWN = 11;

/**
 * Every string of two tunings by its number, the highest number first.
 * @example stringChanges(standard, dropD)[0] // { number: 6, kind: 'down', halfSteps: -2, … }
 */
export function stringChanges(from: Tuning, to: Tuning): readonly StringChange[] {
  const count = Math.max(from.strings.length, to.strings.length);
  return Array.from({ length: count }, (_, at) => {
    const number = count - at;
    return changeOf(number, stringOf(from, number), stringOf(to, number));
  });
}

function changeOf(
  number: number,
  from: TuningString | undefined,
  to: TuningString | undefined,
): StringChange {
  if (!from || !to) return { number, from, to, kind: from ? 'off' : 'add', halfSteps: 0 };
  const steps = to.pitches.map(({ midi }, at) =>
    cleanMidi(midi - (from.pitches[at] ?? from.pitches[0]).midi),
  );
  const other = from.pitches.length !== to.pitches.length || from.firstFret !== to.firstFret;
  if (other || steps.some((step) => step > MOST_UP || step < -MOST_DOWN))
    return { number, from, to, kind: 'exchange', halfSteps: 0 };
  const halfSteps = steps[0] ?? 0;
  const turned = steps.find((step) => step !== 0) ?? 0;
  return { number, from, to, kind: turned === 0 ? 'stays' : turned < 0 ? 'down' : 'up', halfSteps };
}

function stringOf(tuning: Tuning, number: number): TuningString | undefined {
  return tuning.strings.find((_, index) => stringNumber(tuning, index) === number);
}
