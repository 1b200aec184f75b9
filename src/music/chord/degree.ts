import { pitchClassAtFifths } from '../lineOfFifths';

/** A tone of a chord by its distance from the root, as chord symbols write it: `b3`, `#11`, `bb7`. */
export interface Degree {
  /** `5`, `b7`, `#9`; never `1`, which is the root. */
  readonly text: string;
  /** 1 … 13. */
  readonly number: number;
  /** Half steps above the root within an octave, 0…11. */
  readonly halfSteps: number;
  /** Places from the root on the line of fifths, which gives the spelling. */
  readonly fifths: number;
}

/** Places of the major scale's degrees on the line of fifths from the tonic. */
const FIFTHS = [0, 2, 4, -1, 1, 3, 5] as const;

const KNOWN = new Map<string, Degree>();

/**
 * The degree of a text such as `b7`; it must be one.
 * @example degree('#11') // { number: 11, halfSteps: 6, fifths: 6 }
 */
export function degree(text: string): Degree {
  let known = KNOWN.get(text);
  if (!known) {
    const number = Number(text.replace(/^[b#]+/, ''));
    const signs = text.length - String(number).length;
    const alter = text.startsWith('b') ? -signs : signs;
    const fifths = (FIFTHS[(number - 1) % 7] ?? 0) + 7 * alter;
    known = Object.freeze({ text, number, fifths, halfSteps: pitchClassAtFifths(fifths) });
    KNOWN.set(text, known);
  }
  return known;
}

const ORDINALS: Readonly<Record<number, string>> = {
  1: 'root',
  2: 'second',
  3: 'third',
  4: 'fourth',
  5: 'fifth',
  6: 'sixth',
  7: 'seventh',
  9: 'ninth',
  11: 'eleventh',
  13: 'thirteenth',
};

/** `third`, `fifth`, `eleventh`: how players say a degree, without its sign. */
export function ordinal(number: number): string {
  return ORDINALS[number] ?? String(number);
}
