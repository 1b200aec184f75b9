import { failed, ok, type Result } from '../music/result';

/** A value such as `open E -2`, taken apart. */
export interface StepsReading {
  /** What the steps start from, as written; it stands at the beginning of the value. May be empty, or no tuning. */
  readonly base: string;
  readonly steps: Result<WrittenSteps>;
}

export interface WrittenSteps {
  /** Half steps: one number for all strings, or one for each, low string first. */
  readonly steps: readonly number[];
  /** UTF-16 offsets of the steps in the value. */
  readonly start: number;
  readonly end: number;
}

const NUMBER_WORDS = [
  'a',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const AMOUNT = `(?:\\d+\\s+\\d\\/\\d|\\d+\\/\\d+|\\d+(?:\\.\\d+)?\\s?½?|½|half\\s+an?|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)`;
const UNIT = `(?:half[\\s-]?steps?|semitones?|frets?|whole[\\s-]?steps?|whole[\\s-]?tones?|full[\\s-]?steps?|steps?|tones?|octaves?)`;
const WAY = '(?:down|up|lower|higher)';
const WAY_FIRST = new RegExp(
  `^(|.*?[\\s,])(${WAY})(?:\\s+(?:by\\s+)?(?:(${AMOUNT})(?:\\s*(${UNIT}))?|(${UNIT})))?$`,
  'i',
);
const WAY_LAST = new RegExp(`^(|.*?\\s)(?:(${AMOUNT})\\s*)?(${UNIT})\\s+(${WAY})$`, 'i');
const NUMBERS = new RegExp(
  `^(|.*?[\\s,])((?:[+\\u2212–-]?\\d+(?:\\.\\d+)?[\\s,]+)*[+\\u2212–-]?\\d+(?:\\.\\d+)?)(?:\\s*(${UNIT}))?$`,
  'i',
);

/** Two octaves: more is a slip of the pen. */
const FARTHEST = 24;

/**
 * Takes a value apart that says how far to tune from another one: `standard -2 0 0 0 -2 -2`, `open E -2`,
 * `standard down 1`, `standard down 1 step`. Bare numbers are half steps, a step or whole step is two. Undefined when
 * the text says no such thing. Whether the base is a tuning, and how many numbers it needs, is not looked at here.
 * Errors: `steps-amount` (down how far?), `steps-sign` (one number without a sign), `steps-whole`, `steps-range`.
 */
export function readSteps(text: string): StepsReading | undefined {
  const last = WAY_LAST.exec(text);
  if (last) return inWords(text, last[1] ?? '', last[4] ?? '', last[2], last[3]);
  const first = WAY_FIRST.exec(text);
  if (first) return inWords(text, first[1] ?? '', first[2] ?? '', first[3], first[4] ?? first[5]);
  const numbers = NUMBERS.exec(text);
  if (numbers) return inNumbers(text, numbers[1] ?? '', numbers[2] ?? '', numbers[3]);
  return undefined;
}

function inWords(
  text: string,
  before: string,
  way: string,
  amount: string | undefined,
  unit: string | undefined,
): StepsReading {
  const base = withoutEnd(before);
  const start = before.length;
  if (amount === undefined && unit === undefined) {
    const named = `${base === '' ? 'standard' : base} ${way}`;
    const message = `Write how far ${way}: a number of half steps, or of whole steps with the word, such as ${named} 1.`;
    const steps = failed('steps-amount', message, start, text.length, [`${named} 1`, `${named} 2`]);
    return { base, steps };
  }
  const distance = (amount === undefined ? 1 : amountOf(amount)) * unitSize(unit);
  const sign = /^(?:down|lower)$/i.test(way) ? -1 : 1;
  return { base, steps: whole([sign * distance + 0], start, text.length) };
}

function inNumbers(text: string, before: string, list: string, unit: string | undefined): StepsReading {
  const base = withoutEnd(before);
  const tokens = list.split(/[\s,]+/);
  const start = before.length;
  const [only] = tokens;
  if (tokens.length === 1 && only !== undefined && /^\d/.test(only) && Number(only) !== 0) {
    const down = `${base} -${only}`.trim();
    const up = `${base} +${only}`.trim();
    const message = `Write a sign: ${down} for down, ${up} for up.`;
    return { base, steps: failed('steps-sign', message, start, text.length, [down, up]) };
  }
  const size = unitSize(unit);
  const steps = tokens.map((token) => Number(token.replace(/[\u2212–]/, '-')) * size + 0);
  return { base, steps: whole(steps, start, text.length) };
}

function withoutEnd(before: string): string {
  return before.replace(/[\s,]+$/, '');
}

function whole(steps: readonly number[], start: number, end: number): Result<WrittenSteps> {
  if (!steps.every(Number.isInteger)) {
    const message =
      'Steps are whole half steps; for less write the notes with cents, such as G#3-14c. Half a whole step is “half step”.';
    return failed('steps-whole', message, start, end);
  }
  const far = steps.find((step) => Math.abs(step) > FARTHEST);
  if (far !== undefined) {
    return failed('steps-range', `${Math.abs(far)} half steps are more than two octaves.`, start, end);
  }
  return ok({ steps, start, end });
}

/** Half steps in a unit; a bare number counts half steps, as frets do. */
function unitSize(unit: string | undefined): number {
  if (unit === undefined || /^(?:half|semi|fret)/i.test(unit)) return 1;
  return /^octave/i.test(unit) ? 12 : 2;
}

function amountOf(text: string): number {
  const amount = text.toLowerCase().trim();
  if (/^half/.test(amount)) return 0.5;
  if (amount === 'an') return 1;
  const word = NUMBER_WORDS.indexOf(amount);
  if (word >= 0) return Math.max(word, 1);
  const half = amount.endsWith('½') ? 0.5 : 0;
  const [whole, part] = amount.replace('½', '').trim().split(/\s+/);
  return half + numberOf(whole) + numberOf(part);
}

function numberOf(text: string | undefined): number {
  if (text === undefined || text === '') return 0;
  const [upper, lower] = text.split('/');
  return lower === undefined ? Number(upper) : Number(upper) / (Number(lower) || 1);
}
