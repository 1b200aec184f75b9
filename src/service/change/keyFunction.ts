import { nameChord } from '../../music/chord/nameChord';
import { readChordName } from '../../music/chord/readChordName';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { keyScale, type Key, type Mode } from '../../music/key';
import { pitchClassOf } from '../../music/noteName';

/**
 * Half steps from the tonic to the seven degrees of each mode (the church modes on the white keys; any handbook of
 * harmony). Between modes a note of the old scale becomes the same degree of the new one: the third of major the third
 * of minor. Any other note keeps its half steps from the tonic, as a flat third keeps its sound in every mode.
 */
export const MODE_STEPS: Readonly<Record<Mode, readonly number[]>> = {
  major: [0, 2, 4, 5, 7, 9, 11],
  dorian: [0, 2, 3, 5, 7, 9, 10],
  phrygian: [0, 1, 3, 5, 7, 8, 10],
  lydian: [0, 2, 4, 6, 7, 9, 11],
  mixolydian: [0, 2, 4, 5, 7, 9, 10],
  minor: [0, 2, 3, 5, 7, 8, 10],
  locrian: [0, 1, 3, 5, 6, 8, 10],
};

/** Half steps from one tonic to another, the nearest way: −5 to 6. */
export function tonicShift(from: Key, to: Key): number {
  const up = (((pitchClassOf(to.tonic) - pitchClassOf(from.tonic)) % 12) + 12) % 12;
  return up > 6 ? up - 12 : up;
}

/**
 * By how many half steps a pitch moves when it keeps its degree under another key.
 * @param midi as played, that is without a full capo; cents stay
 * @example degreeShift(C major, D minor, 64) // 1: E, the third of C major, becomes F
 */
export function degreeShift(from: Key, to: Key, midi: number): number {
  const step = (((Math.round(midi) - pitchClassOf(from.tonic)) % 12) + 12) % 12;
  const degree = MODE_STEPS[from.mode].indexOf(step);
  const next = MODE_STEPS[to.mode][degree] ?? step;
  return tonicShift(from, to) + next - step;
}

/**
 * A written chord that keeps its function under another key. In another mode it is named anew from what its tones
 * become; a text that is no chord comes back as it is.
 * @example chordInKey('Am', C major, D minor) // 'Bb': the sixth degree, and the triad that stands there
 */
export function chordInKey(text: string, from: Key, to: Key): string {
  const plain = transposeWrittenChord(text, tonicShift(from, to), to);
  const read = readChordName(text);
  if (!read.ok || !read.value.root || from.mode === to.mode) return plain;
  const { root, bass, tones } = read.value;
  const at = (pitchClass: number): number => {
    const midi = 48 + pitchClass;
    return (((midi + degreeShift(from, to, midi)) % 12) + 12) % 12;
  };
  const rootClass = pitchClassOf(root);
  const classes = [
    rootClass,
    ...tones
      .filter(({ need, degree }) => need === 'must' || degree.number === 5)
      .map(({ degree }) => (rootClass + degree.halfSteps) % 12),
  ].map(at);
  const lowest = bass ? at(pitchClassOf(bass)) : (classes[0] ?? 0);
  const midis = [36 + lowest, ...classes.map((pitchClass) => 48 + pitchClass)];
  const naming = nameChord(midis, { key: to, tuningNames: keyScale(to) });
  const names = naming.kind === 'chord' || naming.kind === 'power' ? naming.names : [];
  // The name from the root that the degree has, where there is one.
  const own = names.find(({ name }) => {
    const named = readChordName(name);
    return named.ok && named.value.root && pitchClassOf(named.value.root) === (classes[0] ?? 0);
  });
  return (own ?? names[0])?.name ?? plain;
}
