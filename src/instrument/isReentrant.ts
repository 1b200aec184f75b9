import type { Tuning } from './tuning';

/**
 * Whether the strings do not rise in order: some string is lower than the one before it, counted from the
 * highest-numbered string, as on a ukulele, a five-string banjo or a high-strung guitar. Of a course the first note
 * counts; level strings are no fall.
 */
export function isReentrant(tuning: Tuning): boolean {
  let before = -Infinity;
  for (const { pitches } of tuning.strings) {
    if (pitches[0].midi < before) return true;
    before = pitches[0].midi;
  }
  return false;
}
