import { nameAtFifths, fifthsOf, simplify } from '../lineOfFifths';
import { formatPitchName, type PitchName } from '../noteName';
import type { Degree } from './degree';
import { typeOfFullSet } from './typeTable';

/** A tone that a written name stands for. */
export interface WrittenTone {
  readonly degree: Degree;
  /** Whether the name is not true without it; a perfect fifth, say, may be left out. */
  readonly need: 'must' | 'may';
}

/** A chord as a writer named it. */
export interface WrittenChord {
  /** As written, without blanks around it. */
  readonly text: string;
  /** Undefined for `N.C.`: nothing should sound. */
  readonly root: PitchName | undefined;
  /** Whether the root must sound; not for `A7 (no root)`. */
  readonly rootNeed: 'must' | 'may';
  /** The bass behind a slash. */
  readonly bass: PitchName | undefined;
  /** Tones above the root, from the lowest degree up. */
  readonly tones: readonly WrittenTone[];
  /** Whether the name says that no third sounds: a power chord, or `no3`. */
  readonly thirdForbidden: boolean;
}

/** The set of tones above the root, bit 0 the root; those of one need, or all. */
export function writtenMask(chord: WrittenChord, need?: 'must' | 'may'): number {
  let mask = chord.root && (need === undefined || need === chord.rootNeed) ? 1 : 0;
  for (const tone of chord.tones)
    if (need === undefined || need === tone.need) mask |= 1 << tone.degree.halfSteps;
  return mask;
}

/** The name of a tone of a written chord. */
export function writtenToneName(root: PitchName, tone: Degree): PitchName {
  return simplify(nameAtFifths(fifthsOf(root) + tone.fifths));
}

/**
 * A written chord in plain symbols: `CM7` becomes `Cmaj7`. A set of tones without a symbol stays as it was written.
 * @example formatChord(readChordName('C-7/Bb')) // 'Cm7/Bb'
 */
export function formatChord(chord: WrittenChord): string {
  if (!chord.root) return 'N.C.';
  const type = typeOfFullSet(writtenMask(chord));
  if (!type || chord.rootNeed === 'may') return chord.text;
  const bass = chord.bass ? `/${formatPitchName(chord.bass)}` : '';
  return formatPitchName(chord.root) + type.symbol + bass;
}
