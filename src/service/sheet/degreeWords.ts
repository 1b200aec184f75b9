import { intervalWords } from '../../music/interval';
import { degreeInKey, type Key } from '../../music/key';

const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven'] as const;

/** Degrees on which the three main chords of a key stand (common practice, no source). */
const MAIN_DEGREES: readonly number[] = [1, 4, 5];
/** Half steps above the root of the open chord that are those degrees. */
const MAIN_HALF_STEPS: readonly number[] = [0, 5, 7];

/** Where a chord stands. */
export interface ChordDegree {
  readonly words: string;
  /** One of the three main chords: on the first, fourth or fifth degree. */
  readonly main: boolean;
}

/**
 * The degree of a chord in a key, as players say it: `the four chord`, `the flat seven chord`.
 * @param root any MIDI number of its root
 * @example degreeOfChord(gMajor, 60).words // 'the four chord'
 */
export function degreeOfChord(key: Key, root: number): ChordDegree {
  const { number, alter } = degreeInKey(key, root);
  const sign = alter < 0 ? 'flat ' : alter > 0 ? 'sharp ' : '';
  return {
    words: `the ${sign}${NUMBERS[number - 1] ?? ''} chord`,
    main: alter === 0 && MAIN_DEGREES.includes(number),
  };
}

/**
 * The same where no key is written, counted from the chord of the open strings.
 * @param halfSteps from the root of the open chord up
 * @example degreeAboveOpen(5).words // 'a fourth above the open chord'
 */
export function degreeAboveOpen(halfSteps: number): ChordDegree {
  const size = ((halfSteps % 12) + 12) % 12;
  const main = MAIN_HALF_STEPS.includes(size);
  if (halfSteps === 0) return { words: 'the open chord', main };
  const interval = intervalWords(halfSteps).replace('perfect ', '');
  return { words: `${/^[aeiou]/.test(interval) ? 'an' : 'a'} ${interval} above the open chord`, main };
}
