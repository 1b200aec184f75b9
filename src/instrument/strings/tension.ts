/** 1 pound of force in newtons: 0.45359237 kg × 9.80665 m/s², exact by definition. */
export const NEWTONS_PER_POUND = 4.4482216152605;

/**
 * The tension of a string in newtons: T = μ(2Lf)² (Mersenne, Taylor; strings-and-frets.md P1).
 * @param unitWeight kilograms a metre
 * @param length sounding length of the open string, millimetres
 * @example tensionOf(0.00682, 647.7, 82.41) // 77.8, a .046 in low E
 */
export function tensionOf(unitWeight: number, length: number, hertz: number): number {
  return unitWeight * (2 * (length / 1000) * hertz) ** 2;
}

/**
 * The sounding length of an open string in millimetres: one that begins up the neck, as a banjo's fifth at fret 5, is
 * shorter, L · 2^(−fret / 12) (equal temperament, strings-and-frets.md P7).
 * @example soundingLength(667, 5) // 499.7
 */
export function soundingLength(scaleLength: number, firstFret: number): number {
  return scaleLength * 2 ** (-firstFret / 12);
}
