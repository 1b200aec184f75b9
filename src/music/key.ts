import { fifthsOf, letterSteps, nameAtFifths, nearestFifths, pitchClassAtFifths } from './lineOfFifths';
import { formatPitchName, parsePitchName, pitchClassOf, type PitchName } from './noteName';
import { failed, ok, type Result } from './result';

/** The seven modes of the major scale; ionian is read as major, aeolian as minor. */
export type Mode = 'major' | 'minor' | 'dorian' | 'phrygian' | 'lydian' | 'mixolydian' | 'locrian';

/** A key, such as D mixolydian. */
export interface Key {
  readonly tonic: PitchName;
  readonly mode: Mode;
}

/** A note's place in a key, told against the major scale of the same tonic, as players say it. */
export interface Degree {
  /** 1 (the tonic) … 7. */
  readonly number: 1 | 2 | 3 | 4 | 5 | 6 | 7;
  /** Half steps from the major scale's degree: -1 flat, 1 sharp. */
  readonly alter: number;
  /** `1`, `b3`, `#4`. */
  readonly text: string;
  /** `root`, `flat third`, `sharp fourth`. */
  readonly words: string;
}

/** How many of the scale's seven neighbours on the line of fifths stand before the tonic. */
const BEFORE_TONIC: Readonly<Record<Mode, number>> = {
  lydian: 0,
  major: 1,
  mixolydian: 2,
  dorian: 3,
  minor: 4,
  phrygian: 5,
  locrian: 6,
};

/** Whole words; any beginning of three letters or more is read too, as ABC notation does. */
const MODE_WORDS: readonly (readonly [string, Mode])[] = [
  ['major', 'major'],
  ['minor', 'minor'],
  ['ionian', 'major'],
  ['aeolian', 'minor'],
  ['dorian', 'dorian'],
  ['phrygian', 'phrygian'],
  ['lydian', 'lydian'],
  ['mixolydian', 'mixolydian'],
  ['locrian', 'locrian'],
];

const EXAMPLES = 'D, E minor, Em or D mixolydian';

/**
 * Reads a key: a tonic A–G with one sharp, one flat or none, then a mode; no mode is major.
 * @example readKey('Em') // { tonic: E, mode: 'minor' }
 */
export function readKey(text: string): Result<Key> {
  const lead = text.length - text.trimStart().length;
  const end = text.trimEnd().length;
  const trimmed = text.trim();
  if (/^H(?![a-z])|^H(?:is|m|maj|min)?\b/i.test(trimmed)) {
    return failed(
      'key-tonic',
      'H is B here: write B for the note a half step below C, Bb below that.',
      lead,
      lead + 1,
      ['B' + trimmed.slice(1)],
    );
  }
  const match = /^([A-G])([#b♯♭𝄪𝄫x]*)(?:[ -]?(flat|sharp)(?![a-z]))?[ \t-]*(.*)$/iu.exec(trimmed);
  if (!match) {
    return failed('key', `A key is a tonic A–G and a mode, such as ${EXAMPLES}.`, lead, end, [
      'C major',
      'A minor',
    ]);
  }
  const [, letter = '', signs = '', word = '', rest = ''] = match;
  const sign = word ? (word.toLowerCase() === 'flat' ? 'b' : '#') : '';
  const tonic = parsePitchName(letter + signs.toLowerCase() + sign);
  const modeStart = end - rest.length;
  if (!tonic || Math.abs(tonic.alter) > 1) {
    return failed(
      'key-tonic',
      'The tonic of a key is A–G with one sharp, one flat or none.',
      lead,
      modeStart,
    );
  }
  const mode = readMode(rest);
  if (!mode) {
    return failed(
      'key-mode',
      `"${rest}" is no mode: major, minor, dorian, phrygian, lydian, mixolydian or locrian is expected after ${formatPitchName(tonic)}.`,
      modeStart,
      end,
      [formatKey({ tonic, mode: 'major' }), formatKey({ tonic, mode: 'minor' })],
    );
  }
  return ok(keyOf(tonic, mode));
}

function readMode(text: string): Mode | undefined {
  if (text === '' || text === 'M') return 'major';
  if (text === 'm') return 'minor';
  const word = text.toLowerCase().replace(/\.$/, '');
  if (word.length < 3) return undefined;
  return MODE_WORDS.find(([whole]) => whole.startsWith(word) || word === `${whole} key`)?.[1];
}

const KEYS = new Map<string, Key>();

/** The one frozen record of a key, so that caches may go by identity. */
function keyOf(tonic: PitchName, mode: Mode): Key {
  const text = formatKey({ tonic, mode });
  let key = KEYS.get(text);
  if (!key) KEYS.set(text, (key = Object.freeze({ tonic: Object.freeze({ ...tonic }), mode })));
  return key;
}

/** `D major`, `F# dorian`: what readKey reads again. */
export function formatKey(key: Key): string {
  return `${formatPitchName(key.tonic)} ${key.mode}`;
}

const SCALES = new Map<string, readonly PitchName[]>();

/**
 * The seven notes of a key from the tonic up, each letter once.
 * @example keyScale(E major) // E F# G# A B C# D#
 */
export function keyScale(key: Key): readonly PitchName[] {
  const text = formatKey(key);
  let scale = SCALES.get(text);
  if (!scale) {
    const first = fifthsOf(key.tonic) - BEFORE_TONIC[key.mode];
    const names = Array.from({ length: 7 }, (_, i) => nameAtFifths(first + i));
    names.sort((a, b) => letterSteps(key.tonic.letter, a.letter) - letterSteps(key.tonic.letter, b.letter));
    SCALES.set(text, (scale = Object.freeze(names)));
  }
  return scale;
}

/**
 * Where a pitch class stands on the line of fifths in a key: as the scale has it, any other the nearest to the
 * tonic, flats on the third, sixth and seventh, a sharp on the fourth (common practice, no source).
 */
export function fifthsInKey(key: Key, pitchClass: number): number {
  const tonic = fifthsOf(key.tonic);
  const first = tonic - BEFORE_TONIC[key.mode];
  const inScale = nearestFifths(pitchClass, first + 3);
  if (inScale >= first && inScale < first + 7) return inScale;
  return nearestFifths(pitchClass, tonic + 0.5);
}

const DEGREE_WORDS = ['root', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'] as const;
const DEGREE_NUMBERS = [1, 2, 3, 4, 5, 6, 7] as const;
const ALTER_WORDS: Readonly<Record<string, string>> = {
  '-2': 'double flat ',
  '-1': 'flat ',
  '0': '',
  '1': 'sharp ',
};

/**
 * The degree that a pitch is in a key, against the major scale of its tonic: G in E minor is `b3`, a flat third.
 * @param midi MIDI number; decimals are rounded to the half step.
 * @example degreeInKey(E minor, 55).text // 'b3'
 */
export function degreeInKey(key: Key, midi: number): Degree {
  const fifths = fifthsInKey(key, ((Math.round(midi) % 12) + 12) % 12) - fifthsOf(key.tonic);
  const name = nameAtFifths(fifths);
  const index = letterSteps('C', name.letter);
  const sign = formatPitchName(name).slice(1);
  return Object.freeze({
    number: DEGREE_NUMBERS[index] ?? 1,
    alter: name.alter,
    text: sign + String(index + 1),
    words: (ALTER_WORDS[String(name.alter)] ?? '') + (DEGREE_WORDS[index] ?? ''),
  });
}

/** Sharps (positive) or flats (negative) in the key signature. */
export function signatureOf(key: Key): number {
  return fifthsOf(key.tonic) - BEFORE_TONIC[key.mode] + 1;
}

/**
 * The key some half steps away, in its simplest spelling: the one with fewer signs in the signature; six sharps
 * against six flats goes with the side the key came from.
 * @example transposeKey(D mixolydian, 2) // E mixolydian
 */
export function transposeKey(key: Key, halfSteps: number): Key {
  if (Math.round(halfSteps) % 12 === 0) return keyOf(key.tonic, key.mode);
  const pitchClass = pitchClassOf(key.tonic) + Math.round(halfSteps);
  const towards = signatureOf(key) < 0 ? -0.5 : 0.5;
  const tonic = nearestFifths(pitchClass, BEFORE_TONIC[key.mode] - 1 + towards);
  return keyOf(nameAtFifths(tonic), key.mode);
}

/** Whether a pitch class belongs to the scale of a key. */
export function isInKey(key: Key, pitchClass: number): boolean {
  const first = fifthsOf(key.tonic) - BEFORE_TONIC[key.mode];
  for (let i = first; i < first + 7; i++) if (pitchClassAtFifths(i) === pitchClass) return true;
  return false;
}
