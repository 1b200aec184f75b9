import type { Grip } from '../hand/grips';
import type { HandOptions } from '../hand/options';

/** A way to hold a chord that sounds it and that the hand can hold. */
export interface Shape {
  /** By index in `tuning.strings`, low-placed string first, as frets are written; undefined is not played. */
  readonly frets: readonly (number | undefined)[];
  /** Fingers, barres, position, span, and the hand's cost with its terms. */
  readonly grip: Grip;
  /** Sounding pitch classes, bit 0 is C. */
  readonly sounding: number;
  /** Pitch classes of the chord that do not sound: the fifth, or what else its name lets go. 0 for a full shape. */
  readonly leftOut: number;
  /** Pitch class of the lowest sounding pitch. */
  readonly bass: number;
  /** Bits of strings (by index) that must be kept silent between two that sound. */
  readonly innerMuted: number;
  /** What ranks it: the hand's cost, and what is thin or upside down about it; see `ranking.ts`. */
  readonly cost: number;
}

export interface ShapeOptions {
  /** How many at most, 1 or more; `Infinity` for every one that the hand can hold. 12 where nothing is said. */
  readonly limit?: number;
  /** Highest fret, as frets are written. 15 where nothing is said. */
  readonly highestFret?: number;
  /** Least number of strings that sound; as many as the chord has tones, 3 at most, where nothing is said. */
  readonly leastStrings?: number;
  /**
   * True, where nothing is said: not many variations of one place on the neck. False: simply the cheapest, as a search
   * over a whole progression wants them.
   */
  readonly spread?: boolean;
  /** Reach of the thumb, open strings, strings that may be used, caps. */
  readonly hand: HandOptions;
}

/** Shapes to show where nothing is said (issue: at most twelve). */
export const USUAL_LIMIT = 12;
/** The neck that is looked over where nothing is said. */
export const USUAL_HIGHEST_FRET = 15;
