/** Hertz of A4 where none is written: ISO 16:1975. */
export const STANDARD_PITCH = 440;

/** MIDI number of A4 (MIDI 1.0). */
const A4 = 69;

/**
 * The frequency of a note in hertz in twelve-tone equal temperament.
 * @param midi MIDI number, A4 = 69; decimals are cents divided by 100.
 * @param referencePitch hertz of A4; 440 by ISO 16:1975.
 * @example frequencyOf(40) // 82.41, E2
 */
export function frequencyOf(midi: number, referencePitch = STANDARD_PITCH): number {
  return referencePitch * 2 ** ((midi - A4) / 12);
}

/**
 * Cents from the first frequency up to the second: 1200 · log2 of their ratio, 100 to a half step.
 * @example centsBetween(440, 880) // 1200
 */
export function centsBetween(from: number, to: number): number {
  return 1200 * Math.log2(to / from);
}
