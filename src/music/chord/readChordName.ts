import { parsePitchName } from '../noteName';
import { failed, ok, type Result } from '../result';
import {
  applyAlteration,
  applyNumber,
  applyPower,
  plainQuality,
  tonesOf,
  type Quality,
} from './chordQuality';
import type { WrittenChord } from './writtenChord';

/** One sign of a chord symbol and what it says; the first that matches is taken. */
type Rule = readonly [RegExp, (quality: Quality, match: RegExpExecArray) => void];

/** What comes first if at all: there a hyphen is minor, a plus augmented and 5 a power chord. */
const FIRST_RULES: readonly Rule[] = [
  [/-|min(?:or)?|mi(?!n)|m(?!a(?!dd))/y, minor],
  [/Min(?:or)?|MIN/y, minor],
  [/\+(?!(?:4|5|9|11|13)(?!\d))/y, augmented],
  [/dim(?:inished)?|[°ºo]/iy, diminished],
  [/[øØh]7?/y, halfDiminished],
  [/5(?!\d)/y, applyPower],
];

const RULES: readonly Rule[] = [
  [/sus(?:pended)?\s*(?:2\s*sus4|4\s*sus2|2\s*4|4\s*2)/iy, (quality) => suspend(quality, '2', '4')],
  [/sus(?:pended)?\s*2/iy, (quality) => suspend(quality, '2')],
  [/sus(?:pended)?\s*4?/iy, (quality) => suspend(quality, '4')],
  [/add\s*(?:maj|M)7/y, (quality) => void quality.added.add('7')],
  [
    /add\s*([#b+-]?)(13|11|9|7|6|5|4|3|2)/iy,
    (quality, [, sign = '', number = '']) => add(quality, sign, number),
  ],
  [/(?:no|omit)\s*(?:root|1)(?:st)?/iy, (quality) => void (quality.rootless = true)],
  [/(?:no|omit)\s*(13|11|9|7|5|3)(?:rd|th)?/iy, (quality, [, number]) => omit(quality, Number(number))],
  [/6\s*\/?\s*9/y, (quality) => void quality.added.add('6').add('9')],
  [/alt(?:ered)?/iy, alter],
  [/[#b+-](13|11|9|7|6|5|4|2)/y, sign],
  [/maj(?:or)?|ma|Maj(?:or)?|MAJ|Ma(?!dd)|M(?!i)/y, major],
  [/[ΔΛ△^]/y, deltaSeventh],
  [/aug(?:mented)?|\+/iy, augmented],
  [/13|11|9|7|6|4|2/y, (quality, [number]) => applyNumber(quality, Number(number))],
];

/** Right after the root this is an augmented chord to one reader and an added or sharp tone to another. */
const AMBIGUOUS_PLUS = /^\+(4|9|11|13)(?!\d)/;

/** Blanks, brackets and commas say nothing, nor does a slash before a number or `maj`: m/maj7, m7/9. */
const BETWEEN = /(?:[\s(),[\]]|[/\\](?=\s*(?:ma|M|Δ|[#b]?\d)))+/y;

/**
 * Reads a chord name as players write it: `Am7/G`, `CM7`, `F#m7b5`, `Bb13(#11)`, `N.C.`. The root is a capital A–G
 * and takes the first accidental. What cannot be read is told with its column, never guessed.
 * @example readChordName('D5') // { root: D, tones: 5, thirdForbidden: true }
 */
export function readChordName(text: string): Result<WrittenChord> {
  const lead = text.length - text.trimStart().length;
  const trimmed = text.trim();
  if (/^(?:n\.?\s?c\.?|no chord|tacet)$/i.test(trimmed)) return ok(noChord(trimmed));
  // One sign for one sign, so that columns stay.
  const plain = trimmed.replaceAll('♯', '#').replaceAll('♭', 'b').replaceAll('−', '-').replaceAll('–', '-');
  const start = /^[A-G](?:##|#|b(?:b(?!\d))?)?/.exec(plain)?.[0];
  const root = start === undefined ? undefined : parsePitchName(start);
  if (start === undefined || !root) return rootError(trimmed, lead);
  const slash = /\s*[/\\]\s*([A-G](?:##|#|bb|b)?)\s*$/.exec(plain.slice(start.length));
  const bass = slash ? parsePitchName(slash[1] ?? '') : undefined;
  const end = slash ? start.length + slash.index : plain.length;
  const symbol = plain.slice(0, end);
  const quality = plainQuality();
  let first = true;
  for (let at = start.length; at < end;) {
    const skipped = lengthAt(BETWEEN, symbol, at);
    const read = skipped || readSign(symbol, at, first, quality);
    if (read === 0 || (first && AMBIGUOUS_PLUS.test(symbol.slice(at))))
      return restError(trimmed, at, lead, start);
    if (!skipped) first = false;
    at += read;
  }
  const tones = Object.freeze(tonesOf(quality));
  const rootNeed = quality.rootless ? 'may' : 'must';
  const thirdForbidden = quality.thirdForbidden;
  return ok(
    Object.freeze({ text: trimmed, root: Object.freeze(root), rootNeed, bass, tones, thirdForbidden }),
  );
}

/** How many characters of the symbol the next sign takes; 0 when there is none. */
function readSign(symbol: string, at: number, first: boolean, quality: Quality): number {
  for (const [pattern, apply] of first ? [...FIRST_RULES, ...RULES] : RULES) {
    pattern.lastIndex = at;
    const match = pattern.exec(symbol);
    if (!match) continue;
    apply(quality, match);
    return match[0].length;
  }
  return 0;
}

function lengthAt(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0].length ?? 0;
}

function rootError(text: string, lead: number): Result<WrittenChord> {
  const [letter = ''] = text;
  const upper = letter.toUpperCase();
  const message =
    upper === 'H'
      ? 'H is B here: a chord name begins with a capital A–G.'
      : 'A chord name begins with its root, a capital A–G, such as Am7 or F#m7b5; N.C. means no chord.';
  const mended = (upper === 'H' ? 'B' : upper) + text.slice(1);
  const suggestions = /^[a-hH]/.test(text) && readChordName(mended).ok ? [mended] : [];
  return failed('chord-root', message, lead, lead + letter.length, suggestions);
}

function restError(text: string, at: number, lead: number, root: string): Result<WrittenChord> {
  const rest = text.slice(at).trim();
  const [plus, number = ''] = AMBIGUOUS_PLUS.exec(rest) ?? [];
  if (plus) {
    const eleventh = number === '4' || number === '11';
    const names = eleventh
      ? [`${root}add11`, `${root}(add#11)`]
      : [`${root}add${number}`, `${root}${number}#5`];
    const ambiguous = `"${plus}" in ${text} can mean two chords: write ${names.join(' or ')}.`;
    return failed('chord-name', ambiguous, lead + at, lead + at + plus.length, names);
  }
  const message = /^[/\\]/.test(rest)
    ? `"${rest}" in ${text} is no bass: a slash is followed by a note, a capital A–G.`
    : `"${rest}" in ${text} cannot be read, from character ${at + 1} on: after ${root} come signs such as m, 7, maj7, sus4, dim, add9, b5 or /G.`;
  const kept = text.slice(0, at).trim();
  return failed('chord-name', message, lead + at, lead + text.length, kept === '' ? [] : [kept]);
}

function noChord(text: string): WrittenChord {
  return Object.freeze({
    text,
    root: undefined,
    rootNeed: 'may',
    bass: undefined,
    tones: Object.freeze([]),
    thirdForbidden: false,
  });
}

function minor(quality: Quality): void {
  quality.third = 'b3';
}

/** Before the seventh or, as in 7M, right after it. */
function major(quality: Quality): void {
  quality.major = true;
  if (quality.seventh === 'b7' && quality.extension === 0) quality.seventh = '7';
}

/** The triangle alone is a major seventh. */
function deltaSeventh(quality: Quality): void {
  quality.major = true;
  quality.seventh = '7';
}

function diminished(quality: Quality): void {
  quality.third = 'b3';
  quality.fifths.push('b5');
  quality.diminished = true;
}

function halfDiminished(quality: Quality): void {
  quality.third = 'b3';
  quality.fifths.push('b5');
  quality.seventh = 'b7';
}

function augmented(quality: Quality): void {
  quality.fifths.push('#5');
}

function suspend(quality: Quality, ...tones: string[]): void {
  for (const tone of tones) quality.suspended.add(tone);
  quality.third = undefined;
}

function add(quality: Quality, sign: string, number: string): void {
  const flat = sign === 'b' || sign === '-';
  const degree = number === '2' ? '9' : number === '4' ? '11' : number;
  if (sign === '' && number === '3') quality.third = '3';
  quality.added.add((flat ? 'b' : sign === '' ? '' : '#') + (sign === '' && number === '7' ? 'b7' : degree));
}

function omit(quality: Quality, number: number): void {
  quality.omitted.add(number);
  if (number === 3) quality.thirdForbidden = true;
}

function sign(quality: Quality, match: RegExpExecArray): void {
  const [text, number] = match;
  applyAlteration(quality, text.startsWith('b') || text.startsWith('-') ? 'b' : '#', Number(number));
}

/** An altered dominant: third and seventh stand, fifths and ninths are anything but plain. */
function alter(quality: Quality): void {
  quality.altered = true;
  quality.seventh = 'b7';
}
