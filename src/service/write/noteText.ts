import type { Fraction } from '../../music/fraction';
import { parseNoteName, parsePitchName, type NoteName, type PitchName } from '../../music/noteName';
import { failed, ok, type Result } from '../../music/result';
import { readNoteValue } from './noteValue';

/** Where a note without octave lies: nearest to the one before it, or the next one above or below that. */
export type Move = 'nearest' | 'above' | 'below';

/** One note as it was typed. */
export type TypedTone =
  | { readonly kind: 'pitch'; readonly name: NoteName }
  | { readonly kind: 'name'; readonly name: PitchName; readonly move: Move }
  /** Against the major scale of the key's tonic; `number` from 1 up, `alter` in half steps. */
  | {
      readonly kind: 'degree';
      readonly number: number;
      readonly alter: number;
      readonly move: Move;
      readonly text: string;
    };

/** A piece of the text. Without a length of its own it has the length of the request. */
export type TypedPiece =
  | { readonly kind: 'strike'; readonly tones: readonly TypedTone[]; readonly length: Fraction | undefined }
  /** What rings, rings on. */
  | { readonly kind: 'hold'; readonly length: Fraction | undefined }
  /** What rings is stopped. */
  | { readonly kind: 'silence'; readonly length: Fraction | undefined }
  /** Goes on with the next bar. */
  | { readonly kind: 'bar' };

/** More notes are not written in one go (engineering value: they bound the search). */
export const MOST_NOTES = 2000;

const HIGHEST_DEGREE = 15;
const DEGREE = /^([#b♯♭]{0,2})(\d{1,2})$/u;
/** The flat third, or the note B in octave 3? Alone among degrees it is the degree. */
const TWOFACED = /^b{1,2}\d$/;

/**
 * Reads notes as they are typed; see `WriteNotesRequest.text` for what may stand there.
 * Errors: `note`, `note-twofaced`, `note-value`, `note-empty`, `note-many`; each names the piece that is meant.
 * @example readNoteText('D4 E4:q') // strikes of D4 and, a quarter long, E4
 */
export function readNoteText(text: string): Result<readonly TypedPiece[]> {
  const pieces: TypedPiece[] = [];
  const twofaced: { readonly text: string; readonly at: number }[] = [];
  let named = false;
  let notes = 0;
  for (const match of text.matchAll(/\|+|[^\s,|]+/gu)) {
    const [word] = match;
    const at = match.index;
    if (word.startsWith('|')) {
      pieces.push({ kind: 'bar' });
      continue;
    }
    const colon = word.indexOf(':');
    const body = colon < 0 ? word : word.slice(0, colon);
    let length: Fraction | undefined;
    if (colon >= 0) {
      const read = readNoteValue(word.slice(colon + 1));
      if (!read.ok) return refuse('note-value', lengthTrouble(word), at, word);
      length = read.value;
    }
    if (/^[-–—−]+$/u.test(body)) {
      for (let i = 0; i < body.length; i++) pieces.push({ kind: 'hold', length });
      continue;
    }
    if (/^\.+$/.test(body)) {
      for (let i = 0; i < body.length; i++) pieces.push({ kind: 'silence', length });
      continue;
    }
    const tones: TypedTone[] = [];
    for (const part of body.split('+')) {
      const tone = readTone(part);
      if (typeof tone === 'string') return refuse('note', tone, at, word);
      if (TWOFACED.test(part)) twofaced.push({ text: part, at });
      else if (tone.kind !== 'degree') named = true;
      tones.push(tone);
    }
    notes += tones.length;
    pieces.push({ kind: 'strike', tones, length });
  }
  const [either] = twofaced;
  if (either && named) return refuse('note-twofaced', twofacedTrouble(either.text), either.at, either.text);
  if (notes === 0)
    return failed(
      'note-empty',
      'Type some notes, such as D4 E4 F#4, or degrees, such as 1 2 b3.',
      0,
      text.length,
    );
  if (notes > MOST_NOTES)
    return failed(
      'note-many',
      `Write ${MOST_NOTES} notes at most in one go; these are ${notes}.`,
      0,
      text.length,
    );
  return ok(pieces);
}

/** A sentence where the text is no note. */
function readTone(text: string): TypedTone | string {
  const lead = /^[<>]/.exec(text)?.[0];
  const body = lead === undefined ? text : text.slice(1);
  const move: Move = lead === '>' ? 'above' : lead === '<' ? 'below' : 'nearest';
  const degree = DEGREE.exec(body);
  if (degree) {
    const number = Number(degree[2]);
    const signs = (degree[1] ?? '').replaceAll('♯', '#').replaceAll('♭', 'b');
    if (number < 1 || number > HIGHEST_DEGREE)
      return `“${text}” is no degree: degrees are 1 to 7, and up to ${HIGHEST_DEGREE} an octave above.`;
    if (signs === '#b' || signs === 'b#') return `“${text}” is sharp and flat at once: leave one sign.`;
    const alter = signs.startsWith('b') ? -signs.length : signs.length;
    return { kind: 'degree', number, alter, move, text: signs + String(number) };
  }
  const pitch = parseNoteName(body);
  if (pitch)
    return lead === undefined
      ? { kind: 'pitch', name: pitch }
      : `“${text}” names its octave already: leave “${lead}” or the octave out.`;
  const name = parsePitchName(body);
  if (name) return { kind: 'name', name, move };
  if (/^h/i.test(body)) return `“${text}”: H is B here; write B for the note a half step below C.`;
  return text === ''
    ? 'A + stands between two notes, such as D3+A3.'
    : `“${text}” is no note: a name with its octave (F#4), a name (F#) or a degree (b3) is expected.`;
}

function lengthTrouble(word: string): string {
  return `“${word}”: behind the colon w, h, q, e or s is expected (whole, half, quarter, eighth, sixteenth), with . for dotted or t for a triplet, such as ${word.slice(0, word.indexOf(':'))}:q.`;
}

function twofacedTrouble(text: string): string {
  const flats = text.length - 1;
  return `“${text}” among names can be a note or a degree: write ${text.charAt(0).toUpperCase()}${text.slice(1)} for the note, or ${'♭'.repeat(flats)}${text.slice(-1)} for the degree.`;
}

function refuse(kind: string, message: string, at: number, word: string): Result<never> {
  return failed(kind, message, at, at + word.length);
}
