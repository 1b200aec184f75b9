import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RowName } from '../../../../../src/notation/rowNames';

/**
 * What an import must own up to.
 *
 * - `instrument`: it is not named in the text; the number of lines or the labels tell it, and it is no guitar.
 * - `tuning`: it comes from a sentence or from labels, not from the instrument's usual one.
 * - `capo`: it comes from a sentence.
 * - `labels`: there are none, or the ones written are not the notes of the tuning.
 * - `upside-down`: the lowest-placed string stands on top.
 * - `alignment`: notes were taken to sound together, or one after the other, against their columns.
 * - `bars`: bar lines or repeat signs of another habit, or bar lines that do not stand under each other.
 * - `tabs`: tab characters inside a line, or before its first bar line.
 * - `slides`, `bends`: signs of another habit.
 * - `signs`: any other sign of another habit (hammer-on, tap, harmonic, vibrato).
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

/** A plain tab as someone pastes it, and what a player reads in it. The README beside it says how to compare. */
export interface Snippet {
  /** Name of its text in `text/`, without `.txt`. */
  readonly name: string;
  /** The habit it stands for. */
  readonly why: string;
  /** Name of the instrument; null where nothing in the text is tab. */
  readonly instrument: string | null;
  /** As it would stand in `tuning:`; null for the instrument's usual one. Compare the open strings, not the words. */
  readonly tuning: string | null;
  /** Fret of the capo, or null for none. */
  readonly capo: number | null;
  /** Each system as its bars, in the writing of `expectedNotes.ts`. */
  readonly systems: readonly (readonly string[])[];
  /** String numbers of the lines, top line of the text first, where they are not 1, 2, 3 … */
  readonly strings?: readonly number[];
  /** Passages that are played more than once. Left out: not judged. */
  readonly repeats?: readonly ExpectedRepeat[];
  /** Lines that must be in the result as they are, trimmed at the end. */
  readonly kept: readonly string[];
  /** Lines over or under a staff: each word in a row of this name, in order, or the line as it is. */
  readonly rows?: readonly { readonly row: RowName; readonly text: string }[];
  /** Pieces of string lines that must be somewhere in the result. */
  readonly remarks?: readonly string[];
  /** What must be said; more may be. */
  readonly guesses: readonly GuessKind[];
  /** The text leaves nothing open: nothing may be said. */
  readonly quiet?: true;
  /** Why the crude count of the table's own test cannot read this text. */
  readonly uncounted?: string;
}

/** `times` in all; bars count from 0 in their system. */
export interface ExpectedRepeat {
  readonly system: number;
  readonly firstBar: number;
  readonly lastBar: number;
  readonly times: number;
}

const TEXTS = join(__dirname, 'text');

/** The text of a snippet, character by character. */
export function textOf(snippet: Snippet): string {
  return readFileSync(join(TEXTS, `${snippet.name}.txt`), 'utf8');
}
