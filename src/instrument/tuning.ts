import type { NoteName } from '../music/noteName';

/** One pitch of an open string, sounding without capo. */
export interface OpenPitch {
  /** As the tuning's text spells it, so that Eb tunings speak of flats. */
  readonly name: NoteName;
  /** MIDI number with decimals for cents: `G#3-14c` is 55.86. */
  readonly midi: number;
}

/** A string, or a double course under one finger. */
export interface TuningString {
  /** One pitch, or the two of a course in the order written. The first one is the string's note in labels. */
  readonly pitches: readonly [OpenPitch] | readonly [OpenPitch, OpenPitch];
  /** The fret at which the string begins: 0, or 5 for a banjo's fifth string. Its frets are numbered from the nut. */
  readonly firstFret: number;
  /** Whether the octave was worked out and not written. */
  readonly octaveInferred: boolean;
}

/** The tuning in force. `strings[0]` is the lowest-placed string (string n); the last is string 1. */
export interface Tuning {
  readonly strings: readonly TuningString[];
  /** The trade's or the user's name for it, in its usual letters, when it was given or is known. */
  readonly name: string | undefined;
  /** The value as it was written. */
  readonly text: string;
}

/** The index in `tuning.strings` of string number `number` (1 is the last one); −1 when there is no such string. */
export function stringIndex(tuning: Tuning, number: number): number {
  return number >= 1 && number <= tuning.strings.length ? tuning.strings.length - number : -1;
}

/** The number that players give the string at `index` of `tuning.strings`. */
export function stringNumber(tuning: Tuning, index: number): number {
  return tuning.strings.length - index;
}
