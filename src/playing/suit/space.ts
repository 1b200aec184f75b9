import type { Member } from './front';

/** What a string may be tuned to, seen from the untransposed passage. */
export interface Offer {
  /** Half steps of the string from the start, less the half steps of transposition. */
  readonly relative: number;
  /** Bits of the transpositions under which the retuning is on offer. */
  readonly keys: number;
}

/**
 * Retunings with transpositions, gathered into families: a passage moved by t in a tuning moved by d is fingered as the
 * passage at pitch in the tuning moved by d − t, so only the differences need be looked at.
 */
export interface Space {
  /** For each string of the start, what it may be tuned to, the smallest way first. */
  readonly offers: readonly (readonly Offer[])[];
  readonly transpositions: readonly number[];
  /** Retunings times transpositions. */
  readonly size: number;
  /** All bits. */
  readonly allKeys: number;
}

/** @param steps for each string the half steps on offer */
export function spaceOf(steps: readonly (readonly number[])[], transpositions: readonly number[]): Space {
  const offers = steps.map((own) => {
    const keysOf = new Map<number, number>();
    transpositions.forEach((by, bit) => {
      for (const step of own) keysOf.set(step - by, (keysOf.get(step - by) ?? 0) | (1 << bit));
    });
    return [...keysOf]
      .map(([relative, keys]) => ({ relative, keys }))
      .sort((a, b) => Math.abs(a.relative) - Math.abs(b.relative) || a.relative - b.relative);
  });
  const size = steps.reduce((product, own) => product * own.length, transpositions.length);
  return { offers, transpositions, size, allKeys: 2 ** transpositions.length - 1 };
}

/** The members of the family of these differences, under the transpositions of `keys`. */
export function familyOf(relative: readonly number[], keys: number, space: Space): Member[] {
  const family: Member[] = [];
  space.transpositions.forEach((halfSteps, bit) => {
    if (((keys >> bit) & 1) === 0) return;
    const steps = relative.map((by) => by + halfSteps);
    family.push({ steps, halfSteps, changed: steps.filter((by) => by !== 0).length });
  });
  return family;
}

/** How many bits are set. */
export function countOf(keys: number): number {
  let count = 0;
  for (let rest = keys; rest !== 0; rest &= rest - 1) count++;
  return count;
}
