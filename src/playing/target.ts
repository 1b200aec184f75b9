import type { Fingerboard } from '../instrument/sounding';

/** What a passage is placed on, and the hand that plays it. */
export interface Target {
  readonly fingerboard: Fingerboard;
  /** Open string length, nut to bridge, in millimetres. */
  readonly scaleLength: number;
  /**
   * The widest stretch along the neck between lowest and highest stopped place, in millimetres. 130 is the usual
   * setting (an engineering value: four frets at the first position are 97 mm, 1 to 5 are 126 mm at 648 mm).
   */
  readonly reach: number;
  /** One straight bar: all stopped notes of a moment lie at one place along the neck. */
  readonly slide: boolean;
}

/** The stretch in millimetres taken where no one says otherwise. */
export const USUAL_REACH = 130;

/** How many strings (or courses) a target has. */
export function stringCount(target: Target): number {
  return target.fingerboard.tuning.strings.length;
}

/**
 * The written fret at which the open string begins: 0, or where a partial capo or a short string stops it. Frets above
 * it sound `fret − writtenStop` half steps above the open string.
 */
export function writtenStop(target: Target, index: number): number {
  const { fingerboard } = target;
  // What is added to a written number other than 0 to count it from the nut.
  const shift = fingerboard.absoluteFret(index, 1) - 1;
  return fingerboard.absoluteFret(index, 0) - shift;
}

/** Sounding MIDI number of the last fret of a string; of the open string where there is no fret to stop. */
export function highestMidi(target: Target, index: number): number {
  const { fingerboard } = target;
  return fingerboard.openMidi(index) + Math.max(0, fingerboard.frets - fingerboard.absoluteFret(index, 0));
}
