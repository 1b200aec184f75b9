import { degree } from '../../music/chord/degree';
import type { Fraction } from '../../music/fraction';
import type { Key } from '../../music/key';
import { formatNoteName, midiOf, pitchClassOf, type PitchName } from '../../music/noteName';
import { spellMidi } from '../../music/spelling';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf, soundingSpelling } from '../../notation/headerViews';
import type { Move, TypedPiece, TypedTone } from './noteText';

/** A note to be written: what sounds, and its name in reports. */
export interface NamedPitch {
  /** Sounding MIDI number. */
  readonly midi: number;
  /** With octave, spelled as it was typed. */
  readonly name: string;
}

/** The pieces of a text with their pitches. */
export type PitchedPiece =
  | { readonly kind: 'strike'; readonly notes: readonly NamedPitch[]; readonly length: Fraction | undefined }
  | Exclude<TypedPiece, { readonly kind: 'strike' }>;

/** Whether a text needs a key. */
export function hasDegrees(pieces: readonly TypedPiece[]): boolean {
  return pieces.some((piece) => piece.kind === 'strike' && piece.tones.some(({ kind }) => kind === 'degree'));
}

/**
 * Gives every note its sounding pitch. A name without octave is the nearest to the note before it, of two equally near
 * the higher; the further notes of a chord each lie above the one before. Degrees are counted from the tonic as it
 * sounds, so that under a full capo degree 1 sounds as the key as played does.
 * @param key as played; needed where there are degrees
 * @param before sounding MIDI number of the note before the first
 */
export function pitched(
  pieces: readonly TypedPiece[],
  key: Key | undefined,
  before: number,
  header: Header,
): PitchedPiece[] {
  let last = before;
  return pieces.map((piece): PitchedPiece => {
    if (piece.kind !== 'strike') return piece;
    const notes = piece.tones.map((tone, i): NamedPitch => {
      const note = pitchOf(tone, key, last, i > 0, header);
      last = note.midi;
      return note;
    });
    return { kind: 'strike', notes, length: piece.length };
  });
}

function pitchOf(
  tone: TypedTone,
  key: Key | undefined,
  last: number,
  inChord: boolean,
  header: Header,
): NamedPitch {
  if (tone.kind === 'pitch') return { midi: midiOf(tone.name), name: formatNoteName(tone.name) };
  const move = inChord && tone.move === 'nearest' ? 'above' : tone.move;
  if (tone.kind === 'name') {
    const midi = moved(last, pitchClassOf(tone.name), move);
    return { midi, name: formatNoteName({ ...tone.name, octave: octaveOf(midi, tone.name) }) };
  }
  const tonic = key ? pitchClassOf(key.tonic) + capoShift(header) : 0;
  const midi = moved(last, tonic + degreeSteps(tone.number, tone.alter), move);
  return { midi, name: formatNoteName(spellMidi(midi, soundingSpelling(header))) };
}

/**
 * Half steps of a degree above its tonic, against the major scale as players say it: the flat third is 3.
 * @example degreeSteps(3, -1) // 3
 */
export function degreeSteps(number: number, alter: number): number {
  // Only the root and what is an octave above it are no degree of a chord.
  const plain = ((number - 1) % 7) + 1;
  return (plain === 1 ? 0 : degree(String(plain)).halfSteps) + alter;
}

function moved(last: number, pitchClass: number, move: Move): number {
  const up = (((pitchClass - last) % 12) + 12) % 12;
  switch (move) {
    case 'nearest':
      return last + (up <= 6 ? up : up - 12);
    case 'above':
      return last + (up === 0 ? 12 : up);
    case 'below':
      return last + up - 12;
  }
}

/** By the letter: B#3 is MIDI 60. */
function octaveOf(midi: number, { alter }: PitchName): number {
  return Math.floor((midi - alter) / 12) - 1;
}

/** So many frets above the open strings are reckoned to the middle of an instrument (engineering value). */
const FIRST_FRETS = 5;

/** The middle of what the first five frets sound, as a whole MIDI number: where a phrase without octaves begins. */
export function middleOf(header: Header): number {
  const board = fingerboardOf(header);
  const open = header.tuning.strings.map((_, index) => board.openMidi(index)).filter(Number.isFinite);
  if (open.length === 0) return 60;
  return Math.round((Math.min(...open) + Math.max(...open) + FIRST_FRETS) / 2);
}
