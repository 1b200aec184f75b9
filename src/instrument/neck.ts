/** Geometry of a neck with frets for equal temperament. */

/**
 * Distance in millimetres (or the unit of `scaleLength`) from the nut to a fret, for a fret of 0 or more; parts of a
 * fret are allowed, as for a slide or the touching place of a harmonic. x = L(1 − 2^(−f/12)): equal temperament.
 * @example fretDistance(12, 648) // 324
 */
export function fretDistance(fret: number, scaleLength: number): number {
  return scaleLength * (1 - 2 ** (-fret / 12));
}

/**
 * Distance in millimetres between two frets, never negative.
 * @example spanBetween(1, 4, 648) // 97.3
 */
export function spanBetween(a: number, b: number, scaleLength: number): number {
  return Math.abs(fretDistance(a, scaleLength) - fretDistance(b, scaleLength));
}
