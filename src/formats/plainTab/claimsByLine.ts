import type { Claims } from './claims';

/** A claim farther away than so many others says nothing of a system. */
const MOST_CLAIMS = 20;

/** What the prose says, as it is near to a line or far from it. */
export class ClaimsByLine {
  private readonly lines: readonly number[];
  private passed = 0;

  /** @param end the line behind the last system */
  constructor(
    readonly all: Claims,
    private readonly end: number,
  ) {
    this.lines = [...all.tunings, ...all.instruments, ...all.capos]
      .map((claim) => claim.line)
      .sort((a, b) => a - b);
  }

  /** How many claims stand above a line, which comes after the one asked for last. */
  countAbove(line: number): number {
    while ((this.lines[this.passed] ?? Infinity) < line) this.passed += 1;
    return this.passed;
  }

  /**
   * What is said above a line, the nearest first, then what is said behind the last system: between two systems it is
   * for the later one. Claims are in the order of their lines.
   */
  around<T extends { readonly line: number }>(claims: readonly T[], line: number): T[] {
    const above = firstFrom(claims, line);
    const behind = Math.max(above, firstFrom(claims, this.end));
    return [
      ...claims.slice(Math.max(0, above - MOST_CLAIMS), above).reverse(),
      ...claims.slice(behind, behind + MOST_CLAIMS),
    ];
  }
}

/** The index of the first claim at or behind a line. */
function firstFrom(claims: readonly { readonly line: number }[], line: number): number {
  let [low, high] = [0, claims.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((claims[middle]?.line ?? 0) < line) low = middle + 1;
    else high = middle;
  }
  return low;
}
