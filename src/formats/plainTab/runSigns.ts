import { splitFrets } from '../../notation/cells';
import type { GuessKind } from './importAnswer';
import type { Legend } from './legend';
import { withDirections } from './slideDirections';

/** A sign as the notation writes it, at the column where it stood. */
export interface RunSign {
  readonly column: number;
  /** Columns it took. */
  readonly width: number;
  readonly text: string;
  /** The fret, for a note that has one. */
  readonly fret: number | undefined;
  /**
   * `note`: what sounds · `suffix`: belongs to what stands right before it · `slide`: drawn out to what follows ·
   * `other`: stands for itself
   */
  readonly kind: 'note' | 'suffix' | 'slide' | 'other';
  /** A dash must stand before it. */
  readonly apart: boolean;
}

/** The signs of one bar on one line. */
export interface SegmentSigns {
  readonly signs: readonly RunSign[];
  readonly guesses: ReadonlySet<GuessKind>;
}

interface Draft extends Omit<RunSign, 'column' | 'width' | 'fret' | 'apart'> {
  readonly fret?: number | undefined;
  readonly guess?: GuessKind;
}

const GAP = /[-—_ ]+/y;
const AMOUNT = String.raw`1/4|1/2|3/4|½|¼|¾|full|\d+(?:\.\d+)?`;
const HARMONIC = /<\d{1,2}(?:\.\d+)?>/y;
const SQUARE = /\[(\d{1,2})\]/y;
const CURLY = /\{(\d{1,2})\}/y;
const BRACKET = /\((\d{1,2})\)/y;
const STARRED = /(\d{1,2})\*/y;
const DIGITS = /\d+/y;
const BEND = new RegExp(String.raw`(p?b)(?:\((${AMOUNT})\)|(${AMOUNT}))?`, 'iy');
const RELEASE = /r(?:\((\d+)\)|(\d+))?/iy;
const TRILL = /tr(?:\((\d+)\)|(\d+))/iy;
const CARET = /\^(?:\((\d+)\)|(\d+))?/y;
const WAVES = /~+/y;
const LETTER_WAVES = /[vw]+/iy;
const SLIDE = /[/\\]+/y;
const LETTER_SLIDE = /sl?/iy;
/** Palm mutes written into a string. */
const PALM = /P\.?M\.?/y;
const JOIN = /[hpt]/iy;
const MUTE = /x/iy;
const PARTS: Readonly<Record<string, string>> = { '½': '1/2', '¼': '1/4', '¾': '3/4', full: '' };

/**
 * Reads the signs of a bar on one line, in the habits that people have, as the notation writes them. What is no sign of
 * any habit stays as it is.
 * @param segment what stands between two bar signs
 * @param frets how many the neck has: longer numbers are several frets
 */
export function readSigns(segment: string, legend: Legend, frets: number): SegmentSigns {
  const signs: RunSign[] = [];
  const guesses = new Set<GuessKind>();
  for (let at = 0; at < segment.length;) {
    GAP.lastIndex = at;
    if (GAP.test(segment)) {
      at = GAP.lastIndex;
      continue;
    }
    const before = signs.at(-1);
    const touching = before && before.column + before.width === at ? before : undefined;
    const { draft, end } = signAt(segment, at, touching, legend);
    if (draft.guess) guesses.add(draft.guess);
    if (draft.kind === 'note' && /^\d+$/.test(draft.text)) {
      if (splitInto(signs, draft.text, at, frets)) guesses.add('frets');
    } else {
      signs.push({ ...plain(draft), column: at, width: end - at, apart: false });
    }
    at = end;
  }
  return { signs: withDirections(signs, guesses), guesses };
}

function plain({ text, fret, kind }: Draft): Pick<RunSign, 'text' | 'fret' | 'kind'> {
  return { text, fret, kind };
}

/** Adds a run of digits, as several frets where no neck has that one; tells whether it did. */
function splitInto(signs: RunSign[], digits: string, at: number, most: number): boolean {
  const long = digits.length > 2 || (digits.length === 2 && digits.startsWith('0')) || Number(digits) > most;
  const pieces = long ? splitFrets(digits, most).split('-') : [digits];
  let column = at;
  pieces.forEach((text, i) => {
    signs.push({ column, width: text.length, text, fret: Number(text), kind: 'note', apart: i > 0 });
    column += text.length;
  });
  return long;
}

function signAt(
  segment: string,
  at: number,
  touching: RunSign | undefined,
  legend: Legend,
): { readonly draft: Draft; readonly end: number } {
  const take = (pattern: RegExp): RegExpExecArray | undefined => {
    pattern.lastIndex = at;
    return pattern.exec(segment) ?? undefined;
  };
  const done = (found: RegExpExecArray, draft: Draft): { readonly draft: Draft; readonly end: number } => ({
    draft,
    end: at + found[0].length,
  });
  const note = touching?.kind === 'note' || touching?.kind === 'suffix';

  let found = take(PALM);
  if (found) return done(found, { text: found[0], kind: 'other' });
  found = take(HARMONIC);
  if (found) return done(found, { text: found[0], kind: 'note' });
  found = take(SQUARE);
  if (found) {
    const text = legend.squareGhosts ? `(${found[1] ?? ''})` : `<${found[1] ?? ''}>`;
    return done(found, { text, kind: 'note', guess: 'signs' });
  }
  found = take(CURLY);
  if (found) return done(found, { text: `(${found[1] ?? ''})`, kind: 'note', guess: 'signs' });
  found = take(BRACKET);
  if (found) {
    const bends = legend.bracketBends && note;
    return done(
      found,
      bends
        ? { text: `b${found[1] ?? ''}`, kind: 'suffix', guess: 'bends' }
        : { text: found[0], fret: Number(found[1]), kind: 'note' },
    );
  }
  found = take(STARRED);
  if (found) return done(found, { text: `<${found[1] ?? ''}>`, kind: 'note', guess: 'signs' });
  found = take(DIGITS);
  if (found) return done(found, { text: found[0], kind: 'note' });
  found = take(TRILL);
  if (found) return done(found, { text: `tr${found[1] ?? found[2] ?? ''}`, kind: 'suffix' });
  found = take(BEND);
  if (found) return bendDraft(found);
  found = take(RELEASE);
  if (found) return done(found, { text: `r${found[1] ?? found[2] ?? ''}`, kind: note ? 'suffix' : 'other' });
  found = take(CARET);
  if (found) return caretDraft(found, at, touching, legend);
  found = take(WAVES);
  if (found) return done(found, { text: found[0], kind: note ? 'suffix' : 'other' });
  found = take(LETTER_WAVES);
  if (found && note && !legend.waveIsNot)
    return done(found, { text: '~'.repeat(found[0].length), kind: 'suffix', guess: 'signs' });
  found = take(SLIDE);
  if (found) return done(found, { text: found[0], kind: 'slide' });
  found = take(LETTER_SLIDE);
  if (found) return done(found, { text: '/', kind: 'slide', guess: 'slides' });
  const sign = segment.charAt(at);
  if (sign === '>' && (legend.arrowSlides || (note && /\d/.test(segment.charAt(at + 1)))))
    return { draft: { text: '/', kind: 'slide', guess: 'slides' }, end: at + 1 };
  found = take(JOIN);
  if (found) return done(found, { text: found[0].toLowerCase(), kind: 'other' });
  found = take(MUTE);
  if (found) return done(found, { text: 'x', kind: 'note' });
  if (/o/i.test(sign) && !/[a-z]/i.test(segment.charAt(at + 1)) && !touching)
    return { draft: { text: '0', fret: 0, kind: 'note', guess: 'signs' }, end: at + 1 };
  if (sign === ')') return { draft: { text: sign, kind: 'suffix' }, end: at + 1 };
  const whole = String.fromCodePoint(segment.codePointAt(at) ?? 0);
  return { draft: { text: whole, kind: 'other' }, end: at + whole.length };
}

function bendDraft(found: RegExpExecArray): { readonly draft: Draft; readonly end: number } {
  const written = found[2] ?? found[3] ?? '';
  const amount = PARTS[written.toLowerCase()] ?? written;
  const text = (found[1] ?? 'b').toLowerCase() + amount;
  const plainly = text === found[0] && !text.includes('/');
  return {
    draft: { text, kind: 'suffix', ...(plainly ? {} : { guess: 'bends' }) },
    end: found.index + found[0].length,
  };
}

/** A caret is a bend, or joins two notes: then what follows it is a note of its own. */
function caretDraft(
  found: RegExpExecArray,
  at: number,
  touching: RunSign | undefined,
  legend: Legend,
): { readonly draft: Draft; readonly end: number } {
  const target = found[1] ?? found[2];
  if (legend.caret !== 'hammer-on' || target === undefined)
    return { draft: { text: `b${target ?? ''}`, kind: 'suffix', guess: 'bends' }, end: at + found[0].length };
  const falls = touching?.fret !== undefined && Number(target) < touching.fret;
  return { draft: { text: falls ? 'p' : 'h', kind: 'other', guess: 'signs' }, end: at + 1 };
}
