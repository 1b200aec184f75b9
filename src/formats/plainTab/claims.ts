import { findInstrument } from '../../instrument/instruments';
import type { Instrument } from '../../instrument/instrument';
import { nameKey } from '../../instrument/nameMatching';
import { allTunings } from '../../instrument/tunings';

/** What a line of prose says of instrument, tuning or capo. */
export interface Claim {
  readonly line: number;
  /** The line says nothing else, in the writing of a field. */
  readonly field: boolean;
}

export interface InstrumentClaim extends Claim {
  readonly instrument: Instrument;
}

export interface CapoClaim extends Claim {
  /** As the field writes it: `2`, `2 on 5 4 3`, `none`. */
  readonly value: string;
}

/** A tuning in words; what they come to depends on the instrument. */
export interface TuningClaim extends Claim {
  /**
   * `name` a name or a value of the field · `notes` note names · `steps` half steps from the usual tuning, all strings
   * alike · `string` one string's new note.
   */
  readonly kind: 'name' | 'notes' | 'steps' | 'string';
  readonly value: string;
  /** Half steps, for `steps`. */
  readonly steps: number;
  /** For `string`: its number, 0 for the lowest-placed one. */
  readonly string: number;
  /** Notes given from string 1 on. */
  readonly highFirst: boolean;
  /** Said of this tab, and not only talked about. */
  readonly firm: boolean;
}

/** Everything the prose says, in the order of its lines. */
export interface Claims {
  readonly instruments: readonly InstrumentClaim[];
  readonly tunings: readonly TuningClaim[];
  readonly capos: readonly CapoClaim[];
  /** The words say that the lowest-placed string stands on top. */
  readonly upsideDown: boolean;
}

/** A line of prose longer than this says nothing that is looked for. */
const LONGEST = 400;

/** The first instrument that lines of prose name. */
export function firstInstrument(prose: readonly { readonly columns: string }[]): Instrument | undefined {
  for (const { columns } of prose) {
    const found = columns.length > LONGEST ? undefined : instrumentIn(columns);
    if (found) return found;
  }
  return undefined;
}

/** Collects what lines of prose say. */
export function readClaims(prose: readonly { readonly index: number; readonly columns: string }[]): Claims {
  const instruments: InstrumentClaim[] = [];
  const tunings: TuningClaim[] = [];
  const capos: CapoClaim[] = [];
  let upsideDown = false;
  for (const { index, columns } of prose) {
    const text = columns.trim();
    if (text === '' || text.length > LONGEST) continue;
    const instrument = instrumentIn(text);
    if (instrument) instruments.push({ line: index, field: /^instrument\s*[:=]/i.test(text), instrument });
    const capo = capoIn(text);
    if (capo) capos.push({ line: index, ...capo });
    tunings.push(...tuningsIn(text).map((claim) => ({ line: index, ...claim })));
    upsideDown ||= UPSIDE_DOWN.test(text);
  }
  return { instruments, tunings, capos, upsideDown };
}

const UPSIDE_DOWN =
  /\b(?:low(?:est)?(?: [Ee])?(?: string)?,? (?:is |stands )?(?:the |on |at )*top|upside[- ]down|(?:sixth|6th) string (?:is )?(?:on|at) (?:the )?top)\b/i;

const MOST_WORDS = 4;

const MAY_NAME_INSTRUMENT =
  /guitar|bass|uke|ukulele|banjo|mando|steel|string|requinto|terz|baritone|bouzouki/i;

/** The longest name of an instrument in a text. */
function instrumentIn(text: string): Instrument | undefined {
  if (!MAY_NAME_INSTRUMENT.test(text)) return undefined;
  let best: { readonly instrument: Instrument; readonly length: number } | undefined;
  for (const { words } of windows(text)) {
    const instrument = words.length > 3 ? findInstrument(words) : undefined;
    if (instrument && words.length > (best?.length ?? 0)) best = { instrument, length: words.length };
  }
  return best?.instrument;
}

/** Up to four words in a row, with what stands before them. */
function windows(
  text: string,
): { readonly words: string; readonly before: string; readonly after: string }[] {
  const found = [...text.matchAll(/[\p{L}\p{N}#♯♭'’/-]+/gu)];
  return found.flatMap((first, i) =>
    Array.from({ length: Math.min(MOST_WORDS, found.length - i) }, (_, n) => {
      const last = found[i + n] ?? first;
      const end = last.index + last[0].length;
      return {
        words: text.slice(first.index, end),
        before: text.slice(0, first.index),
        after: text.slice(end),
      };
    }),
  );
}

const ROMAN: readonly string[] = [
  '',
  'I',
  'II',
  'III',
  'IV',
  'V',
  'VI',
  'VII',
  'VIII',
  'IX',
  'X',
  'XI',
  'XII',
];
const ORDINAL: readonly string[] = [
  '',
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
];

function capoIn(text: string): { readonly value: string; readonly field: boolean } | undefined {
  const field =
    /^capo\s*[:=]\s*(?:(?:on|at)\s+)?(?:fret\s+)?(?:\d{1,2}(?:st|nd|rd|th)?|none|[IVX]+)(?:\s+fret)?\.?$/i.test(
      text,
    );
  if (/\b(?:no|without(?: a)?)\s+capo\b|\bcapo\s*[:=]?\s*(?:none|no|off|0)\b/i.test(text))
    return { value: 'none', field };
  const number = '(\\d{1,2}|[IVX]+|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth)';
  const found =
    new RegExp(
      `\\bcapo(?:ed)?\\b\\s*[:=]?\\s*(?:(?:is|on|at|in|the|fret|position)\\s+)*${number}(?:st|nd|rd|th)?\\b`,
      'i',
    ).exec(text) ?? new RegExp(`\\b${number}(?:st|nd|rd|th)?\\s+fret\\s+capo\\b`, 'i').exec(text);
  const written = found?.[1] ?? '';
  const fret = /^\d/.test(written)
    ? Number(written)
    : Math.max(ROMAN.indexOf(written), ORDINAL.indexOf(written.toLowerCase()));
  if (fret <= 0 || fret > 24) return undefined;
  const on =
    /^\s*(?:fret\s+)?on (?:the )?(?:strings? )?(\d{1,2}(?:(?:\s*(?:,|-|and|to|&)\s*|\s+)\d{1,2})*)/i.exec(
      text.slice((found?.index ?? 0) + (found?.[0].length ?? 0)),
    );
  return {
    value: on ? `${fret} on ${on[1] ?? ''}` : String(fret),
    field: field || (on !== null && /^capo\s*:/i.test(text)),
  };
}

type Said = Omit<TuningClaim, 'line'>;

const PLAIN = { steps: 0, string: 0, highFirst: false, field: false, firm: true } as const;
const NOTE = '[A-Ga-g](?:#|b|♯|♭)?\\d?';
const NOTES = new RegExp(
  `(?<![\\p{L}\\d#])(?:${NOTE}(?:[ ,/-]+(?=${NOTE})|(?=${NOTE}))){3,13}${NOTE}(?![\\p{L}\\d#])`,
  'gu',
);
const ABOUT_TUNING = /\btun(?:e|ed|ing|ings)\b/i;
const HIGH_FIRST =
  /\b(?:1st|first) to\b|\bhigh(?:est)? to low|\bfrom (?:the )?(?:top|high|first|1st)|\btop to bottom/i;

function tuningsIn(text: string): Said[] {
  const about = ABOUT_TUNING.test(text);
  const field = /^tuning\s*[:=]\s*\S/i.exec(text);
  const value = field ? text.replace(/^tuning\s*[:=]\s*/i, '') : '';
  const steps = stepsIn(text);
  const said: Said[] = [];
  if (steps !== undefined) said.push({ ...PLAIN, kind: 'steps', value: '', steps, field: field !== null });
  const one =
    /\b(\d{1,2})(?:st|nd|rd|th) string (?:down |up |tuned )?to ([A-G][#b]?)(?![A-Za-z])/.exec(text) ??
    /\b(?:low|bottom)(?: E)?(?: string)? (?:down |tuned )?to ([A-G][#b]?)(?![A-Za-z])/.exec(text);
  if (one) {
    const [, first = '', second] = one;
    said.push({
      ...PLAIN,
      kind: 'string',
      value: second ?? first,
      string: second === undefined ? 0 : Number(first),
    });
  }
  for (const { name, firm } of namesIn(text, about)) said.push({ ...PLAIN, kind: 'name', value: name, firm });
  for (const [notes] of text.matchAll(NOTES)) {
    const tight = /^[A-Ga-g#b♯♭\d]+$/.test(notes);
    if (tight && !about && !text.includes(`(${notes})`)) continue;
    said.push({
      ...PLAIN,
      kind: 'notes',
      value: notes,
      highFirst: HIGH_FIRST.test(text),
      firm: about || tight,
    });
  }
  // Last, since of one line's claims the last one comes first.
  if (field) said.push({ ...PLAIN, kind: 'name', value, field: true });
  return said;
}

/** Half steps by which all strings are lowered or raised. */
function stepsIn(text: string): number | undefined {
  const size = '(half|1/2|½|whole|full|one|two|1|2|a)';
  const unit = '(?:[ -](?:an?[ -]|whole[ -]|half[ -])?)(steps?|tones?|semitones?)';
  const found =
    new RegExp(`\\b(down|lower|up|higher)\\b[^.]{0,20}?(?<![\\w/])${size}${unit}`, 'i').exec(text) ??
    new RegExp(`(?<![\\w/])${size}${unit}[^.]{0,12}?\\b(down|lower|flat|up|higher)\\b`, 'i').exec(text);
  if (!found) return undefined;
  const [all] = found;
  const up = /\b(?:up|higher)\b/i.test(all);
  const semitones = /semitone|half|1\/2|½/i.test(all);
  const two = /\b(?:two|2)\b/i.test(all);
  const steps = (semitones ? 1 : 2) * (two && !/1\/2/.test(all) ? 2 : 1);
  return up ? steps : -steps;
}

const MAY_NAME_TUNING = /open|drop|low|half|whole|standard|\b(?:in|with)\b|[([]|(?:[A-G][#b]?){5}/i;

/** Names that are also words of everyday life count only where the line speaks of tunings. */
function namesIn(text: string, about: boolean): { readonly name: string; readonly firm: boolean }[] {
  if (!about && !MAY_NAME_TUNING.test(text)) return [];
  const short = text.split(/\s+/).length <= 4;
  const found: { name: string; firm: boolean; length: number; at: number }[] = [];
  for (const { words, before, after } of windows(text)) {
    if (words.length < 2 || !known(words)) continue;
    const plain = /^(?:[A-G][#b]?){5,8}$|^(?:open|drop|dropped|double|low|half|whole)[ -]|standard/i.test(
      words,
    );
    const said =
      /\b(?:in|with) (?:an? |the )?$/i.test(before) ||
      /^\s*\([A-Ga-g#b♯♭ -]+\)/.test(after) ||
      /[([]\s*$/.test(before);
    const named = about && /^\s*tuning|^\s*[,.;)]|^\s*$/i.test(after);
    if (!plain && !said && !named) continue;
    const talk =
      /\b(?:also|too|sounds?|try|tried|could|would|instead)\b/i.test(text) && !/standard/i.test(words);
    found.push({
      name: words,
      firm: !talk && (about || short || said),
      length: words.length,
      at: before.length,
    });
  }
  // Of names that lie over each other the longest one.
  return found.filter(
    (one) =>
      !found.some(
        (other) =>
          other.length > one.length && other.at <= one.at && other.at + other.length >= one.at + one.length,
      ),
  );
}

/** Names of tunings in the form in which they are compared, whatever instrument they are for. */
let tuningKeys: ReadonlySet<string> | undefined;

function known(words: string): boolean {
  tuningKeys ??= new Set(
    allTunings().flatMap(({ name, aliases }) => [name, ...aliases].map((one) => nameKey(one))),
  );
  const key = nameKey(words);
  return tuningKeys.has(key) || tuningKeys.has(key.replace(/tuning$/, ''));
}
