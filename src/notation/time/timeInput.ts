import type { Fraction } from '../../music/fraction';
import type { Meter } from '../../music/meter';

export { readTimes } from './readTimes';

/** The columns of one system, as far as time is concerned; column 0 is that of each line's first `|`. */
export interface TimeInput {
  readonly meter: Meter;
  /** Bars in order; columns between the bar signs: `start` is the first column after the sign that opens it, `end` the column of the sign that closes it (exclusive), or the width of the system. Columns that any string gives to a sign are not in any bar. */
  readonly bars: readonly { readonly start: number; readonly end: number }[];
  /** The columns where notes (or stops) begin, ascending, distinct. */
  readonly onsets: readonly number[];
  /** Columns with nothing but second (or further) digits of numbers on all strings (every other string has a dash there). */
  readonly secondDigits: ReadonlySet<number>;
  /** Syllables of the count row in order, when there is one: runs without a space, each at its column. */
  readonly count: readonly CountSyllable[] | undefined;
  /** For each onset, the last column its own characters take, so that a syllable over any of a note's columns pins the note. */
  readonly onsetEnds: readonly number[];
  /** For each onset, the first column of the signs that bring its notes from nowhere (`/7`, `t12`); its own column where none does, or where left out. */
  readonly onsetStarts?: readonly number[];
  readonly firstInPart: boolean;
  readonly firstInSection: boolean;
  /** The width of the system, which `columnTimes` reaches to; without it, the end of the last bar. */
  readonly width?: number;
}

/** A run of the count row without a space, such as `1`, `1e&a` or `101112`. */
export interface CountSyllable {
  readonly text: string;
  readonly column: number;
  readonly width: number;
}

/** The time of everything in a system, in quarter notes from its start. */
export interface TimeReading {
  readonly timing: 'counted' | 'inferred';
  readonly bars: readonly BarTime[];
  /**
   * For every column from 0 to the width of the system, never falling. The column of a bar sign has the time of the
   * bar that begins there, the columns past the last bar its end. A column that carries no time has that of the next
   * one that does: padding that of its bar's start, a second digit that of the column after its number.
   */
  readonly columnTimes: readonly Fraction[];
  /** True when every column of every bar was read exactly, false when some bar was snapped. */
  readonly exact: boolean;
  readonly problems: readonly CountProblem[];
}

export interface BarTime {
  readonly onset: Fraction;
  readonly length: Fraction;
  readonly pickup: boolean;
}

/**
 * A syllable of the count that pins nothing, and why.
 *
 * - `count-syllable`: no syllable of a count. Facts: `meter`; `dotted` is 1 where the count is in dotted beats, which
 *   have no `e`.
 * - `count-range`: a number that the meter has not. Facts: `meter`, `highest`.
 * - `count-order`: no later than the syllable before it. Facts: `after` (that syllable's text; empty for a part of a
 *   beat that stands before a 1).
 * - `count-fit`: its place. Fact `reason`: `outside` (over a bar sign, or past the last bar), `late` (at the first
 *   column of a bar that cannot be a pickup, but not 1; the fact `expected` is `1`), `notes-before` (a bar begins there,
 *   yet notes of that bar stand before it).
 */
export interface CountProblem {
  readonly kind: 'count-order' | 'count-range' | 'count-syllable' | 'count-fit';
  readonly column: number;
  readonly width: number;
  readonly text: string;
  readonly facts: Record<string, string | number>;
}
