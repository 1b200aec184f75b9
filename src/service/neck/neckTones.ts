import { readChordName } from '../../music/chord/readChordName';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { writtenToneName, type WrittenChord } from '../../music/chord/writtenChord';
import { fifthsInKey, formatKey, keyScale, readKey, transposeKey, type Key } from '../../music/key';
import { nameAtFifths, simplify } from '../../music/lineOfFifths';
import { pitchClassOf, type PitchName } from '../../music/noteName';
import { formatScale, readScale, scaleSteps } from '../../music/scale';
import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import type { ServiceError } from '../serviceApi';
import type { NeckRequest, NeckTones } from './neckAnswer';

/** What is marked on the neck, as it sounds. */
export interface MarkedTones {
  readonly kind: NeckTones['kind'];
  /** For the user; under a full capo as played and as it sounds. */
  readonly name: string;
  /** From the root up; empty for none. */
  readonly notes: readonly PitchName[];
  /** The key that degrees are counted in, as it sounds; undefined where nothing says. */
  readonly key: Key | undefined;
  /** That key by name: `D mixolydian`, `A minor pentatonic`. */
  readonly degreesIn: string | undefined;
}

/**
 * What a request marks: a chord, a scale, else the key in force. Names are taken as played, as the notation has them
 * under a full capo, and answered as they sound.
 * @returns one sentence that says what to change, where the scale or chord cannot be read
 * @example tonesOf({ scale: 'D mixolydian' }, header) // D E F# G A B C
 */
export function tonesOf(request: NeckRequest, header: Header): MarkedTones | ServiceError {
  const { scale, chord } = request;
  if (scale !== undefined && chord !== undefined)
    return { error: 'A scale and a chord cannot both be marked: ask for one of them.' };
  if (chord !== undefined) return chordTones(chord, header);
  if (scale !== undefined) return scaleTones(scale, header);
  if (!header.key) return { kind: 'none', name: '', notes: [], key: undefined, degreesIn: undefined };
  return keyTones(header.key, header, 'key');
}

function keyTones(played: Key, header: Header, kind: 'key' | 'scale'): MarkedTones {
  const shift = capoShift(header);
  const key = shift === 0 ? played : transposeKey(played, shift);
  const name = alsoSounding(formatKey(played), formatKey(key));
  return { kind, name, notes: keyScale(key), key, degreesIn: formatKey(key) };
}

function scaleTones(text: string, header: Header): MarkedTones | ServiceError {
  if (text.trim() === '') return { error: 'Write a scale, such as D dorian or A minor pentatonic.' };
  const asKey = readKey(text);
  if (asKey.ok) return keyTones(asKey.value, header, 'scale');
  const read = readScale(text);
  if (!read.ok) return { error: read.error.message };
  const { name } = read.value;
  const tonic = read.value.tonic ?? header.key?.tonic;
  if (!tonic)
    return {
      error: `Write the first note of the scale too, such as D ${name}; without it the key says it, and none is written.`,
    };
  const shift = capoShift(header);
  // Degrees are told against the major scale of the same tonic, as players say them; so are notes spelled.
  const played: Key = { tonic, mode: 'major' };
  const key = shift === 0 ? played : transposeKey(played, shift);
  const named = ({ tonic: from }: Key): string => formatScale({ tonic: from, name });
  const notes = scaleSteps(name).map((steps) => spelledIn(key, pitchClassOf(key.tonic) + steps));
  return { kind: 'scale', name: alsoSounding(named(played), named(key)), notes, key, degreesIn: named(key) };
}

function spelledIn(key: Key, midi: number): PitchName {
  return simplify(nameAtFifths(fifthsInKey(key, midi % 12)));
}

function chordTones(text: string, header: Header): MarkedTones | ServiceError {
  if (text.trim() === '') return { error: 'Write the name of a chord, such as Am7 or G/B.' };
  const played = readChordName(text);
  if (!played.ok) return { error: played.error.message };
  if (!played.value.root)
    return { error: 'N.C. means that no chord sounds: write a chord, such as Am7 or G/B.' };
  const shift = capoShift(header);
  const key = header.key && (shift === 0 ? header.key : transposeKey(header.key, shift));
  const moved = shift === 0 ? played : readChordName(transposeWrittenChord(played.value.text, shift, key));
  const sounding = moved.ok ? moved.value : played.value;
  return {
    kind: 'chord',
    name: alsoSounding(played.value.text, sounding.text),
    notes: notesOf(sounding),
    key,
    degreesIn: key && formatKey(key),
  };
}

/** The notes from the root up, a bass of its own last; each once. */
function notesOf({ root, tones, bass }: WrittenChord): readonly PitchName[] {
  if (!root) return [];
  const notes = [root, ...tones.map(({ degree }) => writtenToneName(root, degree))];
  const known = notes.some((note) => bass && pitchClassOf(note) === pitchClassOf(bass));
  return bass && !known ? [...notes, bass] : notes;
}

function alsoSounding(played: string, sounding: string): string {
  return played === sounding ? played : `${played} as played, sounding ${sounding}`;
}
