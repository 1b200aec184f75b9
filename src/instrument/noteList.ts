import { formatNoteName, midiOf, parsePitchName, type PitchName } from '../music/noteName';
import type { Notice } from '../music/result';
import type { TuningString } from './tuning';

/** The most strings a tuning can have: labels know the numbers 1 to 14. */
export const MOST_STRINGS = 14;

/** One note of a list as it was written. */
export interface WrittenPitch {
  readonly name: PitchName;
  readonly octave: number | undefined;
  /** −99.99 … 99.99 */
  readonly cents: number;
}

/** One string of a list as it was written: a note, or the two of a course. */
export interface WrittenString {
  readonly pitches: readonly [WrittenPitch] | readonly [WrittenPitch, WrittenPitch];
  /** UTF-16 offsets in the whole value. */
  readonly start: number;
  readonly end: number;
}

export interface NoteList {
  /** The strings up to the problem, if there is one. */
  readonly strings: readonly WrittenString[];
  readonly problem: Notice | undefined;
  /** Whether a small `b` between letters could be a flat as well as the note B, as in `eadgbe`. */
  readonly ambiguous: boolean;
}

const SEPARATOR = /[\s,;\u2010-\u2015\u2212-]/;
const CENTS = /([+\u2212-])(\d{1,3}(?:\.\d{1,2})?)(?:\s?(?:cents?|ct)|c|¢)(?![a-z])/iy;
const DOUBLE = /(?:##|♯♯|♭♭|𝄪|𝄫)/uy;
/** `bb` is a double flat only where nothing follows that could make its second `b` a note. */
const DOUBLE_FLAT = /bb(?=\d|$|[\s,;/+\u2010-\u2015\u2212-])/y;
const SINGLE = /[#♯♭b]/y;

/**
 * Reads a list of notes: spaces, commas or hyphens may stand between them or nothing at all; letters in either case;
 * `#`, `b`, octaves 0–9, cents (`G#3-14c`) and courses (`E2/E3`). After a letter `b` is a flat. Where a list is
 * written in one piece with small letters (`eadgbe`) both readings are tried, and the one whose number of notes is
 * nearest to `usualCount` is taken, of equals the one with the flats.
 * Problems: `bad-note`, `bad-cents`, `too-many-strings`.
 * @param offset where `text` begins in the whole value, for the offsets of strings and problems
 */
export function readNoteList(text: string, offset: number, usualCount: number): NoteList {
  const piece = text.trim();
  const open = isAmbiguous(piece);
  if (!open) return { ...scan(text, offset, new Set()), ambiguous: false };
  const shift = text.indexOf(piece);
  let best: NoteList | undefined;
  for (const notes of readingsOfB(piece)) {
    const list = scan(text, offset, new Set(notes.map((at) => at + shift)));
    if (list.problem) continue;
    const better =
      best === undefined ||
      Math.abs(list.strings.length - usualCount) < Math.abs(best.strings.length - usualCount);
    if (better) best = { ...list, ambiguous: true };
  }
  return best ?? { ...scan(text, offset, new Set()), ambiguous: true };
}

/** Small letters in one piece, among them a `b` after a letter; `GDGBbD` is none, its one small letter is a flat. */
function isAmbiguous(piece: string): boolean {
  return (
    piece.length <= 2 * MOST_STRINGS &&
    /^[A-Ga-g#♯♭]+$/.test(piece) &&
    /[ac-g]/.test(piece) &&
    /[A-Ga-g]b/.test(piece)
  );
}

/** Every choice of the places where a `b` after a letter is the note B, the choice with the most flats first. */
function readingsOfB(piece: string): readonly (readonly number[])[] {
  const places = Array.from(piece.matchAll(/b/g), (match) => match.index).filter((at) => at > 0);
  if (places.length > 8) return [[]];
  const choices: number[][] = [];
  for (let mask = 0; mask < 2 ** places.length; mask++) {
    choices.push(places.filter((_, bit) => (mask >> bit) & 1));
  }
  return choices.sort((a, b) => a.length - b.length);
}

/** `notes` holds the offsets in `text` of each `b` that is a note though it follows a letter. */
function scan(text: string, offset: number, notes: ReadonlySet<number>): Omit<NoteList, 'ambiguous'> {
  const strings: WrittenString[] = [];
  let at = 0;
  for (;;) {
    while (at < text.length && SEPARATOR.test(text.charAt(at))) at++;
    if (at >= text.length) return { strings, problem: undefined };
    if (strings.length === MOST_STRINGS) {
      return { strings, problem: tooMany(text, offset, at) };
    }
    const start = at;
    const first = readPitch(text, at, notes);
    if (!first) return { strings, problem: badNote(text, offset, at) };
    at = first.end;
    let pitches: WrittenString['pitches'] = [first.pitch];
    if (text.charAt(at) === '/') {
      const second = readPitch(text, at + 1, notes);
      if (!second) return { strings, problem: badNote(text, offset, at + 1) };
      at = second.end;
      pitches = [first.pitch, second.pitch];
    }
    const wild = pitches.find((pitch) => Math.abs(pitch.cents) >= 100);
    if (wild) {
      const message = `Cents count from the note, less than a hundred of them; ${wild.cents} reach the next note. Write that note.`;
      const end = offset + at;
      return {
        strings,
        problem: { kind: 'bad-cents', message, start: offset + start, end, suggestions: [] },
      };
    }
    strings.push({ pitches, start: offset + start, end: offset + at });
  }
}

function readPitch(
  text: string,
  start: number,
  notes: ReadonlySet<number>,
): { readonly pitch: WrittenPitch; readonly end: number } | undefined {
  let at = start + 1;
  const accidental = notes.has(at)
    ? ''
    : (sticky(DOUBLE, text, at) ?? sticky(DOUBLE_FLAT, text, at) ?? sticky(SINGLE, text, at) ?? '');
  const name = parsePitchName(text.charAt(start) + accidental);
  if (!name) return undefined;
  at += accidental.length;
  let octave: number | undefined;
  if (/\d/.test(text.charAt(at))) octave = Number(text.charAt(at++));
  if (/\d/.test(text.charAt(at))) return undefined;
  let cents = 0;
  CENTS.lastIndex = at;
  const match = CENTS.exec(text);
  if (match) {
    cents = Number(match[2]) * (match[1] === '+' ? 1 : -1);
    at += match[0].length;
  }
  return { pitch: { name, octave, cents }, end: at };
}

function sticky(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

function badNote(text: string, offset: number, at: number): Notice {
  let end = at;
  while (end < text.length && !SEPARATOR.test(text.charAt(end))) end++;
  const written = text.slice(at, end);
  // Where nothing stands after the slash of a course, the slash is what to look at.
  const range = { start: offset + (end > at ? at : at - 1), end: offset + end };
  if (/^h/i.test(written)) {
    const mended = text.replace(/h/g, 'b').replace(/H/g, 'B');
    const message = 'H is not a note here: write B for it, and Bb for the note a half step lower.';
    return { kind: 'bad-note', message, ...range, suggestions: [mended.trim()] };
  }
  const message =
    `${written === '' ? 'A note is missing here.' : `“${written}” is no note.`} ` +
    'Write the letters A to G with # or b and, if you like, an octave, such as E2 or G#3.';
  return { kind: 'bad-note', message, ...range, suggestions: [] };
}

function tooMany(text: string, offset: number, at: number): Notice {
  return {
    kind: 'too-many-strings',
    message: `A tuning has at most ${MOST_STRINGS} strings; take out the notes from here on.`,
    start: offset + at,
    end: offset + text.trimEnd().length,
    suggestions: [text.slice(0, at).trim()],
  };
}

/** Notes with octaves, cents and courses, low string first: `E2/E3 A2/A3 …`. Reads back to the same pitches. */
export function formatNoteList(strings: readonly TuningString[]): string {
  return strings
    .map(({ pitches }) =>
      pitches.map(({ name, midi }) => formatNoteName(name) + formatCents(midi - midiOf(name))).join('/'),
    )
    .join(' ');
}

function formatCents(halfSteps: number): string {
  const cents = Math.round(halfSteps * 10000) / 100;
  return cents === 0 ? '' : `${cents > 0 ? '+' : ''}${cents}c`;
}
