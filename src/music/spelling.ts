import { fifthsInKey, type Key } from './key';
import { nameAtFifths, simplify } from './lineOfFifths';
import { pitchClassOf, type NoteName, type PitchName } from './noteName';

/** What decides between G# and Ab: the key first, then the way the tuning is written. Hand the same record on. */
export interface SpellingContext {
  readonly key: Key | undefined;
  /** The open strings' names as the tuning's text spells them. */
  readonly tuningNames: readonly PitchName[];
}

/** Common practice without key or tuning to go by (no source): C# Eb F# Ab Bb. Places on the line of fifths. */
const USUAL_FIFTHS = [0, 7, 2, -3, 4, -1, 6, 1, -4, 3, -2, 5] as const;
const FLAT_FIFTHS = [0, -5, 2, -3, 4, -1, -6, 1, -4, 3, -2, 5] as const;
const SHARP_FIFTHS = [0, 7, 2, 9, 4, -1, 6, 1, 8, 3, 10, 5] as const;

const TABLES = new WeakMap<SpellingContext, readonly PitchName[]>();

/**
 * The names of the twelve pitch classes in a context. With a key, a scale note as the scale spells it and any
 * other as it is nearest to the tonic; without one, as the tuning's own strings are spelled, and beyond them in
 * flats if the tuning is written in flats, in sharps if in sharps.
 */
export function spellingTable(context: SpellingContext): readonly PitchName[] {
  let table = TABLES.get(context);
  if (!table) TABLES.set(context, (table = Object.freeze(makeTable(context))));
  return table;
}

function makeTable({ key, tuningNames }: SpellingContext): PitchName[] {
  if (key) return USUAL_FIFTHS.map((_, pitchClass) => simplify(nameAtFifths(fifthsInKey(key, pitchClass))));
  const flats = tuningNames.some((name) => name.alter < 0);
  const sharps = tuningNames.some((name) => name.alter > 0);
  const usual = flats === sharps ? USUAL_FIFTHS : flats ? FLAT_FIFTHS : SHARP_FIFTHS;
  return usual.map((fifths, pitchClass) => {
    const own = tuningNames.find((name) => pitchClassOf(name) === pitchClass);
    return own ? Object.freeze({ letter: own.letter, alter: own.alter }) : nameAtFifths(fifths);
  });
}

/**
 * The name and octave of a pitch in a context.
 * @param midi MIDI number; decimals are rounded to the half step.
 * @example spellMidi(56, { key: eMajor, tuningNames: [] }) // G#3
 */
export function spellMidi(midi: number, context: SpellingContext): NoteName {
  const table = spellingTable(context);
  const whole = Math.round(midi);
  const { letter, alter } = table[((whole % 12) + 12) % 12] ?? { letter: 'C', alter: 0 };
  return { letter, alter, octave: octaveOf(whole, alter) };
}

/** The octave by the letter: B#3 is MIDI 60, Cb4 is 59. */
function octaveOf(midi: number, alter: number): number {
  return Math.floor((midi - alter) / 12) - 1;
}
