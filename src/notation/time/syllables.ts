import { LOWER_NOTE, type MeterTicks } from './ticks';

/** A syllable of a count: the number of a beat, a part of one, or what is neither. */
export type Syllable =
  | { readonly kind: 'number'; readonly text: string; readonly column: number; readonly value: number }
  | { readonly kind: 'part'; readonly text: string; readonly column: number; readonly part: Part }
  | { readonly kind: 'unknown'; readonly text: string; readonly column: number };

/** `&` half-way, `e` and `a` the quarters about it, `t` and `l` the thirds. */
export type Part = '&' | 'e' | 'a' | 't' | 'l';

const PARTS: ReadonlyMap<string, Part> = new Map([
  ['&', '&'],
  ['+', '&'],
  ['e', 'e'],
  ['a', 'a'],
  ['t', 't'],
  ['trip', 't'],
  ['l', 'l'],
  ['let', 'l'],
]);

const SIMPLE: Readonly<Record<Part, number | undefined>> = {
  '&': LOWER_NOTE / 2,
  e: LOWER_NOTE / 4,
  a: (LOWER_NOTE * 3) / 4,
  t: LOWER_NOTE / 3,
  l: (LOWER_NOTE * 2) / 3,
};

/** The parts of a dotted beat are its three lower notes; `e` would be none of them. */
const DOTTED: Readonly<Record<Part, number | undefined>> = {
  '&': LOWER_NOTE,
  e: undefined,
  a: LOWER_NOTE * 2,
  t: LOWER_NOTE,
  l: LOWER_NOTE * 2,
};

/** What the numbers of a count are. */
export interface CountUnit {
  /** Ticks from a number to the next. */
  readonly ticks: number;
  readonly highest: number;
  /** Ticks of each part past its number; undefined for a part that these beats have not. */
  readonly parts: Readonly<Record<Part, number | undefined>>;
  readonly dotted: boolean;
}

/** Numbers are lower notes, or dotted beats where `dotted`. */
export function countUnit(meter: MeterTicks, dotted: boolean): CountUnit {
  return dotted
    ? { ticks: meter.perBeat, highest: meter.beats, parts: DOTTED, dotted }
    : { ticks: LOWER_NOTE, highest: meter.perBar / LOWER_NOTE, parts: SIMPLE, dotted };
}

const RUNS = /\d+|[&+]|[^\d&+]+/gu;
const LETTERS = /^(?:trip|let|[etal])+$/i;
const LETTER = /trip|let|[etal]/gi;

/** A syllable, or digits that may be several numbers, cut out of a run. */
export interface Piece {
  readonly text: string;
  readonly column: number;
  readonly part: Part | undefined;
}

/**
 * Takes touching syllables apart. Digits stay together: what numbers they are depends on what comes before them. A run
 * of letters that is not all syllables is one unknown syllable.
 * @example splitRun('1e&a', 4) // 1 at 4, e at 5, & at 6, a at 7
 */
export function splitRun(text: string, column: number): readonly Piece[] {
  // Nearly every run of a count row is one character.
  if (text.length === 1) return [{ text, column, part: PARTS.get(text) ?? PARTS.get(text.toLowerCase()) }];
  const pieces: Piece[] = [];
  for (const run of text.matchAll(RUNS)) {
    const syllables = LETTERS.test(run[0]) ? (run[0].match(LETTER) ?? []) : [run[0]];
    let at = column + run.index;
    for (const syllable of syllables) {
      pieces.push({ text: syllable, column: at, part: PARTS.get(syllable.toLowerCase()) });
      at += syllable.length;
    }
  }
  return pieces;
}

/**
 * What numbers touching digits are: ascending, none above `highest`, and of such splits the one that leaves out the
 * fewest numbers. Digits that cannot be split so are one number, for the checks to tell.
 * @example splitNumbers('101112', 9, 12) // [10, 11, 12]
 * @example splitNumbers('12', 0, 4) // [1, 2]
 */
export function splitNumbers(digits: string, previous: number, highest: number): readonly number[] {
  return cheapestSplit(digits, previous, highest)?.numbers ?? [Number(digits)];
}

function cheapestSplit(
  digits: string,
  previous: number,
  highest: number,
): { readonly numbers: readonly number[]; readonly skipped: number } | undefined {
  if (digits === '') return { numbers: [], skipped: 0 };
  let best: { readonly numbers: readonly number[]; readonly skipped: number } | undefined;
  for (let length = 1; length <= Math.min(2, digits.length); length++) {
    const value = Number(digits.slice(0, length));
    if (digits.startsWith('0') || value <= previous || value > highest) continue;
    const rest = cheapestSplit(digits.slice(length), value, highest);
    const skipped = value - previous - 1 + (rest?.skipped ?? 0);
    if (rest && (best === undefined || skipped < best.skipped))
      best = { numbers: [value, ...rest.numbers], skipped };
  }
  return best;
}
