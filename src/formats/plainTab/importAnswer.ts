/**
 * What an import must own up to: a kind for the program, a sentence for the player.
 *
 * - `instrument`: it is not named in the text; the lines or their labels tell it, and it is no guitar.
 * - `tuning`: it comes from a sentence or from labels, not from the instrument's usual one.
 * - `capo`: it comes from a sentence.
 * - `labels`: there are none, or the ones written are not the notes of the tuning.
 * - `upside-down`: the lowest-placed string stood on top.
 * - `alignment`: notes were taken to sound together, or one after the other, against their columns.
 * - `bars`: bar lines or repeat signs of another habit, or bar lines that do not stand under each other.
 * - `tabs`: tab characters inside a line, or before its first bar line.
 * - `slides`, `bends`, `signs`: signs of another habit.
 * - `frets`: a run of digits was taken for more than one fret.
 */
export type GuessKind =
  | 'instrument'
  | 'tuning'
  | 'capo'
  | 'labels'
  | 'upside-down'
  | 'alignment'
  | 'bars'
  | 'tabs'
  | 'slides'
  | 'bends'
  | 'signs'
  | 'frets';

/** Something that was worked out and not read, in a sentence for the player. */
export interface ImportGuess {
  readonly kind: GuessKind;
  readonly words: string;
  /** Line of the text that was read, from 0. */
  readonly line: number;
}

/** What an import makes of a plain text. */
export interface ImportAnswer {
  /** The whole as a tab: the fields and the body. Where no tab was found, the text as it was. */
  readonly text: string;
  /** The lines of fields that belong on top: none where what is in force already says it. */
  readonly fields: readonly string[];
  /** The text without those. */
  readonly body: string;
  readonly guesses: readonly ImportGuess[];
  /** Lines of the text that were read, from 0, that stay as they are: prose, headings, legends. */
  readonly kept: readonly number[];
  /** How many systems were found. */
  readonly systems: number;
}

/** What the caller says before anything is guessed, as it would stand in the fields. */
export interface ImportRequest {
  readonly text: string;
  readonly instrument?: string;
  readonly tuning?: string;
}
