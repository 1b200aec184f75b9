import { formatPitchName, parsePitchName, pitchClassOf, type PitchName } from './noteName';
import { failed, ok, type Result } from './result';
import { SCALE_NAMES, TABLE_NAMES, type ScaleName } from './scaleNames';
import { scaleNotes } from './tonalAdapter';

/** A scale as a player names it. */
export interface NamedScale {
  /** Undefined where only the kind was named: `dorian`. */
  readonly tonic: PitchName | undefined;
  /** One of `SCALE_NAMES`. */
  readonly name: ScaleName;
}

/** Other words for the same (common practice, no source). */
const OTHER_NAMES: Readonly<Record<string, ScaleName>> = {
  ionian: 'major',
  aeolian: 'minor',
  'natural minor': 'minor',
  pentatonic: 'major pentatonic',
  'pentatonic major': 'major pentatonic',
  'pentatonic minor': 'minor pentatonic',
  'minor blues': 'blues',
  'jazz minor': 'melodic minor',
};

/**
 * Reads a scale: a tonic A–G with one sharp, one flat or none, then its name; the tonic may be left out.
 * Errors: `scale-tonic`, `scale-name` with the names that there are.
 * @example readScale('A minor pentatonic') // { tonic: A, name: 'minor pentatonic' }
 */
export function readScale(text: string): Result<NamedScale> {
  const written = text.trim();
  const match = /^(?:([A-Ga-g])([#b♯♭]*)(?=[\s-]|$)(?:[\s-]*(flat|sharp)(?![a-z]))?)?[\s-]*(.*)$/iu.exec(
    written,
  );
  const [, letter = '', signs = '', word = '', rest = ''] = match ?? [];
  const sign = word === '' ? '' : word.toLowerCase() === 'flat' ? 'b' : '#';
  const tonic = letter === '' ? undefined : parsePitchName(letter + signs + sign);
  if (letter !== '' && (!tonic || Math.abs(tonic.alter) > 1))
    return failed(
      'scale-tonic',
      'The first note of a scale is A–G with one sharp, one flat or none.',
      0,
      text.length,
    );
  const name = scaleName(rest);
  if (name) return ok({ tonic, name });
  const begin = beginOf(written);
  if (begin !== undefined)
    return failed(
      'scale-tonic',
      `“${begin}” is no note for a scale to begin on: A–G with one sharp, one flat or none is expected.`,
      0,
      text.length,
      ['D dorian'],
    );
  const what =
    rest === '' ? `A scale has a name after ${written || 'its first note'}` : `“${rest}” is no scale here`;
  return failed('scale-name', `${what}: ${SCALE_NAMES.join(', ')} are known.`, 0, text.length, [
    `${tonic ? formatPitchName(tonic) : 'D'} dorian`,
  ]);
}

/** What stands before the name of a scale, where it is no note. */
function beginOf(text: string): string | undefined {
  const names = [...SCALE_NAMES, ...Object.keys(OTHER_NAMES)].sort((a, b) => b.length - a.length);
  const plain = text.toLowerCase();
  const name = names.find((one) => plain.endsWith(` ${one}`));
  return name && text.slice(0, -name.length).trim();
}

function scaleName(text: string): ScaleName | undefined {
  const plain = text
    .toLowerCase()
    .replace(/[\s-]+/g, ' ')
    .replace(/ ?(?:scale|mode)$/, '')
    .trim();
  return SCALE_NAMES.find((name) => name === plain) ?? OTHER_NAMES[plain];
}

const STEPS = new Map<ScaleName, readonly number[]>();

/**
 * The notes of a scale as half steps above its tonic, 0…11, from the tonic up.
 * @example scaleSteps('dorian') // [0, 2, 3, 5, 7, 9, 10]
 */
export function scaleSteps(name: ScaleName): readonly number[] {
  let steps = STEPS.get(name);
  if (!steps) {
    const notes = scaleNotes({ letter: 'C', alter: 0 }, TABLE_NAMES[name]);
    if (!notes.ok) throw new Error(notes.error.message);
    STEPS.set(name, (steps = Object.freeze(notes.value.map(pitchClassOf))));
  }
  return steps;
}

/** `D dorian`: what readScale reads again. */
export function formatScale({ tonic, name }: NamedScale): string {
  return tonic ? `${formatPitchName(tonic)} ${name}` : name;
}
