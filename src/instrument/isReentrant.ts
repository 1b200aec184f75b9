import { isReentrant as fallsAnywhere } from '../music/chord/nameChord';
import type { Tuning } from './tuning';

/**
 * Whether the strings do not rise in order: some string is lower than the one before it, counted from the
 * highest-numbered string, as on a ukulele, a five-string banjo or a high-strung guitar. Of a course the first note
 * counts; level strings are no fall.
 */
export function isReentrant(tuning: Tuning): boolean {
  return fallsAnywhere(tuning.strings.map(({ pitches }) => pitches[0].midi));
}
