import type { Asked } from './command';
import { Refusal } from './refusal';

/** What a number may be. */
export interface NumberLimits {
  readonly whole?: boolean;
  readonly least: number;
  readonly most: number;
}

/**
 * The number given for an option; undefined where it is not given.
 * @throws {Refusal} for anything else, and beyond the limits
 */
export function numberOf({ values }: Asked, name: string, limits: NumberLimits): number | undefined {
  const written = values.get(name);
  if (written === undefined) return undefined;
  const value = /^\s*[+−-]?\d+(?:\.\d+)?\s*$/.test(written) ? Number(written.replace('−', '-')) : NaN;
  const { whole = false, least, most } = limits;
  if ((!whole || Number.isInteger(value)) && value >= least && value <= most) return value;
  throw new Refusal(
    `--${name} takes a ${whole ? 'whole number' : 'number'} from ${least} to ${most}; “${written}” is none.`,
  );
}

/**
 * The word given for an option; undefined where it is not given.
 * @throws {Refusal} for a word that is none of these
 */
export function wordOf<Word extends string>(
  { values }: Asked,
  name: string,
  words: readonly Word[],
): Word | undefined {
  const written = values.get(name);
  if (written === undefined) return undefined;
  const word = words.find((one) => one === written.trim().toLowerCase());
  if (word !== undefined) return word;
  const [first = '', ...others] = words;
  const last = others.pop();
  const list = last === undefined ? first : `${[first, ...others].join(', ')} or ${last}`;
  throw new Refusal(
    `--${name} takes ${list}; “${written}” is ${words.length === 2 ? 'neither' : 'none of them'}.`,
  );
}
