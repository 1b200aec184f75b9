import type { Range } from 'vscode-languageserver';
import type { ServiceError } from '../service/serviceApi';

/** A kind of value that a client may send. */
export interface Kind<T> {
  readonly fits: (value: unknown) => value is T;
  /** Ends the sentence `… was expected as`. */
  readonly expected: string;
}

export const TEXT: Kind<string> = { fits: (value) => typeof value === 'string', expected: 'text' };
export const NUMBER: Kind<number> = { fits: isNumber, expected: 'a number' };
export const FLAG: Kind<boolean> = { fits: (value) => typeof value === 'boolean', expected: 'true or false' };
export const NUMBERS: Kind<readonly number[]> = {
  fits: (value) => Array.isArray(value) && value.every(isNumber),
  expected: 'a list of numbers',
};

/** A shape: a fret for each string, null where it is not played. */
export const FRETS: Kind<readonly (number | null)[]> = {
  fits: (value): value is readonly (number | null)[] =>
    Array.isArray(value) && value.every((one) => one === null || (isNumber(one) && Number.isInteger(one))),
  expected: 'a list of whole numbers, with null for strings that are not played',
};

const isPlace = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  'line' in value &&
  'character' in value &&
  isNumber(value.line) &&
  isNumber(value.character);

/** Stretches of a text, as the protocol writes them. */
export const RANGES: Kind<readonly Range[]> = {
  fits: (value): value is readonly Range[] =>
    Array.isArray(value) &&
    value.every(
      (one: unknown) =>
        typeof one === 'object' &&
        one !== null &&
        'start' in one &&
        'end' in one &&
        isPlace(one.start) &&
        isPlace(one.end),
    ),
  expected: 'a list of ranges',
};

/** One of some words. */
export function oneOf<const Word extends string>(...words: readonly Word[]): Kind<Word> {
  return {
    fits: (value): value is Word => words.some((word) => word === value),
    expected: `one of ${words.join(', ')}`,
  };
}

/** A list of some words. */
export function someOf<const Word extends string>(...words: readonly Word[]): Kind<readonly Word[]> {
  const one = oneOf(...words);
  return {
    fits: (value): value is readonly Word[] => Array.isArray(value) && value.every(one.fits),
    expected: `a list of ${words.join(', ')}`,
  };
}

/** What was read under each name; only what was given stands in it. */
export type Read<Shape> = { readonly [Name in keyof Shape]?: Shape[Name] extends Kind<infer T> ? T : never };

/**
 * Takes what a request knows from what a client sent. What is null counts as left out; the first value of a wrong
 * kind is told in one sentence, and nothing is done.
 *
 * @example readParams({ by: 'up' }, { by: NUMBER }) // { error: 'The parameter by was expected as a number.' }
 */
export function readParams<Shape extends Readonly<Record<string, Kind<unknown>>>>(
  params: object,
  shape: Shape,
): Read<Shape> | ServiceError {
  const sent = new Map<string, unknown>(Object.entries(params));
  const read: Record<string, unknown> = {};
  for (const [name, { fits, expected }] of Object.entries(shape)) {
    const value = sent.get(name) ?? undefined;
    if (value === undefined) continue;
    if (!fits(value)) return { error: `The parameter ${name} was expected as ${expected}.` };
    read[name] = value;
  }
  return read as Read<Shape>;
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}
