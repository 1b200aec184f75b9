import { fifthsInKey, type Key } from '../key';
import { fifthsOf, nameAtFifths, nearestFifths, pitchClassAtFifths, simplify } from '../lineOfFifths';
import { pitchClassOf, type PitchName } from '../noteName';
import type { Degree } from './degree';

/** Roots where nothing else decides (common practice, no source): C# Eb F# Ab Bb. */
const USUAL_ROOTS = [0, 7, 2, -3, 4, -1, 6, 1, -4, 3, -2, 5] as const;
/** Beyond F and B on the line of fifths: Cb, Fb and further, E#, B# and further. */
const FEWEST = -6;
const MOST = 10;

/**
 * Where the root of a chord stands on the line of fifths. With a key, as the key spells it; without one, so that
 * the sounding tones need the fewest accidentals and stay nearest to the spelling of the tuning.
 * @param degrees the sounding tones above the root
 */
export function rootFifths(
  root: number,
  degrees: readonly Degree[],
  key: Key | undefined,
  tuningNames: readonly PitchName[],
): number {
  if (key) return fifthsInKey(key, root);
  const usual = USUAL_ROOTS[root] ?? 0;
  let best: number = usual;
  let least = burden(usual, degrees, tuningNames);
  for (const other of [usual - 12, usual + 12]) {
    if (other < FEWEST || other > MOST) continue;
    const cost = burden(other, degrees, tuningNames);
    if (cost < least) [best, least] = [other, cost];
  }
  return best;
}

/** Accidentals to read, and twice as much for a note that the tuning's text spells in another way. */
function burden(root: number, degrees: readonly Degree[], tuningNames: readonly PitchName[]): number {
  let sum = toneBurden(root, tuningNames);
  for (const { fifths } of degrees) sum += toneBurden(root + fifths, tuningNames);
  return sum;
}

function toneBurden(fifths: number, tuningNames: readonly PitchName[]): number {
  const pitchClass = pitchClassAtFifths(fifths);
  const own = tuningNames.find((name) => pitchClassOf(name) === pitchClass);
  const otherwise = own !== undefined && fifthsOf(own) !== fifths ? 2 : 0;
  return accidentalBurden(fifths) + otherwise;
}

/** F … B are plain; Bb … Gb and F# … A# one sign; Cb Fb and E# B# twice as hard; double signs worse. */
function accidentalBurden(fifths: number): number {
  if (fifths >= -1 && fifths <= 5) return 0;
  if (fifths < -8 || fifths > 12) return 3;
  return fifths < -6 || fifths > 10 ? 2 : 1;
}

/** The name of a tone of a chord: one spelling for the chord, double accidentals written simply. */
export function toneName(root: number, degree: Degree): PitchName {
  return simplify(nameAtFifths(root + degree.fifths));
}

/**
 * The name of a note outside the chord: as the key has it, else the tuning's text, else nearest to the
 * root, but C and not B#.
 */
export function foreignName(
  pitchClass: number,
  root: number,
  key: Key | undefined,
  tuningNames: readonly PitchName[],
): PitchName {
  if (key) return simplify(nameAtFifths(fifthsInKey(key, pitchClass)));
  const own = tuningNames.find((name) => pitchClassOf(name) === pitchClass);
  if (own) return Object.freeze({ letter: own.letter, alter: own.alter });
  const near = nearestFifths(pitchClass, root + 0.5);
  return nameAtFifths(accidentalBurden(near) > 1 ? nearestFifths(pitchClass, 2.5) : near);
}
