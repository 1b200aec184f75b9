/**
 * Exact times as fractions of a quarter note. A record of two safe integers and not a library's class: the
 * resolver makes hundreds on every keystroke, and every onset must survive printing to the last digit.
 */
export interface Fraction {
  readonly n: number;
  /** Always positive; n and d share no factor. */
  readonly d: number;
}

export const ZERO: Fraction = { n: 0, d: 1 };

/**
 * The fraction n/d in lowest terms.
 * @example fraction(6, -4) // { n: -3, d: 2 }
 */
export function fraction(n: number, d = 1): Fraction {
  if (d === 1) return { n, d };
  const divisor = commonDivisor(Math.abs(n), Math.abs(d)) * (d < 0 ? -1 : 1);
  return { n: n / divisor + 0, d: d / divisor };
}

/** Greatest common divisor of two non-negative integers; 1 for two zeros, so that it can divide. */
export function commonDivisor(a: number, b: number): number {
  while (b) [a, b] = [b, a % b];
  return a || 1;
}

export function add(a: Fraction, b: Fraction): Fraction {
  return a.d === b.d ? fraction(a.n + b.n, a.d) : fraction(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function subtract(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d - b.n * a.d, a.d * b.d);
}

export function multiply(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.n, a.d * b.d);
}

export function divide(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d, a.d * b.n);
}

/** Negative, zero or positive, as for Array.sort. */
export function compare(a: Fraction, b: Fraction): number {
  return a.n * b.d - b.n * a.d;
}

export function equal(a: Fraction, b: Fraction): boolean {
  return a.n === b.n && a.d === b.d;
}

export function toNumber(a: Fraction): number {
  return a.n / a.d;
}

/** `3/2`, or `2` for a whole number. */
export function formatFraction(a: Fraction): string {
  return a.d === 1 ? String(a.n) : `${a.n}/${a.d}`;
}
