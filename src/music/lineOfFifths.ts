import { LETTERS, type Letter, type PitchName } from './noteName';

/**
 * The line of fifths, … Bb F C G D A E B F# …: each name a fifth above the one before. C is 0, G 1, F -1. A scale
 * is seven neighbours on it, which is why spelling is reckoned here and not in half steps.
 */

const ORDER: readonly Letter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];
const PLACE: Readonly<Record<Letter, number>> = { F: -1, C: 0, G: 1, D: 2, A: 3, E: 4, B: 5 };

/**
 * Where a name stands on the line.
 * @example fifthsOf({ letter: 'B', alter: -1 }) // -2
 */
export function fifthsOf(name: PitchName): number {
  return PLACE[name.letter] + 7 * name.alter;
}

/** Names from Fbbb to B###, made once: spelling asks for them on every keystroke. */
const FIRST = -22;
const NAMES: readonly PitchName[] = Array.from({ length: 49 }, (_, i) => makeName(FIRST + i));

function makeName(fifths: number): PitchName {
  const step = fifths + 1;
  const alter = Math.floor(step / 7);
  return Object.freeze({ letter: ORDER[step - 7 * alter] ?? 'C', alter });
}

/**
 * The name at a place of the line, any whole number; the record is frozen.
 * @example nameAtFifths(6) // { letter: 'F', alter: 1 }
 */
export function nameAtFifths(fifths: number): PitchName {
  return NAMES[fifths - FIRST] ?? makeName(fifths);
}

/** The pitch class of a place of the line, 0 (C) … 11 (B). */
export function pitchClassAtFifths(fifths: number): number {
  return (((fifths * 7) % 12) + 12) % 12;
}

/**
 * Of all places with this pitch class the one nearest to `centre`; give the centre a half, so that no two are
 * equally near.
 * @example nearestFifths(6, 0.5) // 6, F#
 */
export function nearestFifths(pitchClass: number, centre: number): number {
  const one = (((pitchClass * 7) % 12) + 12) % 12;
  return one + 12 * Math.round((centre - one) / 12);
}

/**
 * The same pitch class without double accidentals: `Bbb` becomes `A`. Names with one accidental or none stay.
 */
export function simplify(name: PitchName): PitchName {
  if (Math.abs(name.alter) < 2) return name;
  return nameAtFifths(nearestFifths(pitchClassAtFifths(fifthsOf(name)), name.alter < 0 ? -0.5 : 2.5));
}

/** How many letters up from one name to another, 0…6. */
export function letterSteps(from: Letter, to: Letter): number {
  return (LETTERS.indexOf(to) - LETTERS.indexOf(from) + 7) % 7;
}
