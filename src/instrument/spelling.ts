import { LETTERS, midiOf, type Letter, type NoteName, type PitchName } from '../music/noteName';

/** The letters as they follow each other on the line of fifths; F is −1, C is 0, G is 1. */
const FIFTHS: readonly Letter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];

/** A string to name after it was tuned elsewhere. */
export interface Respelled {
  /** Its new pitch, a whole MIDI number. */
  readonly midi: number;
  /** The name it keeps; undefined where it moved. */
  readonly kept: NoteName | undefined;
}

/**
 * Names for strings that were tuned up or down, so that all of them together lie closest on the line of fifths:
 * open E a whole step down holds F#, standard a half step down is all flats. Of equals the fewest accidentals, then
 * flats when `down`.
 */
export function respell(strings: readonly Respelled[], down: boolean): readonly NoteName[] {
  let best: { readonly names: readonly NoteName[]; readonly cost: readonly number[] } | undefined;
  for (let window = -8; window <= 1; window++) {
    const names = strings.map(({ midi, kept }) => kept ?? noteAt(positionIn(window, midi), midi));
    const places = names.map(positionOf);
    const spread = Math.max(...places) - Math.min(...places);
    const accidentals = names.reduce((sum, name) => sum + Math.abs(name.alter), 0);
    const farness = places.reduce((sum, place) => sum + Math.abs(place - 2), 0);
    const cost = [spread, accidentals, down ? 0 : farness];
    if (best === undefined || isLess(cost, best.cost)) best = { names, cost };
  }
  return best?.names ?? [];
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (const [index, value] of a.entries()) {
    const other = b[index] ?? 0;
    if (value !== other) return value < other;
  }
  return false;
}

function positionOf(name: PitchName): number {
  return FIFTHS.indexOf(name.letter) - 1 + 7 * name.alter;
}

/** The one place among the twelve from `window` on whose note has the pitch class of `midi`. */
function positionIn(window: number, midi: number): number {
  const wanted = ((((midi * 7) % 12) + 12) % 12) - window;
  return window + (((wanted % 12) + 12) % 12);
}

function noteAt(position: number, midi: number): NoteName {
  const alter = Math.floor((position + 1) / 7);
  const letter = FIFTHS[position + 1 - 7 * alter] ?? LETTERS[0] ?? 'C';
  const octave = Math.round((midi - midiOf({ letter, alter, octave: 0 })) / 12);
  return { letter, alter, octave };
}
