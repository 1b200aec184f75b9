/** One line of the benchmark's table. */
export interface Row {
  readonly what: string;
  /** What each of the runs measured. */
  readonly runs: readonly number[];
  readonly unit: 'ms' | 'µs' | 'ns' | '×' | '';
  readonly goal?: Goal;
  /** Printed behind the figures. */
  readonly note?: string;
}

/** What the median is held to; it decides no exit code, since times depend on the machine. */
export type Goal = { readonly atMost: number } | { readonly atLeast: number; readonly alarmUnder?: number };

/** A benchmark: hands out its rows as soon as it has them. */
export type Bench = (report: (row: Row) => void) => Promise<void> | void;

/** How often each measurement is made; the median of the runs is what counts. */
export const RUNS = 5;

/** The middle value; of an even number of values the upper middle one, NaN for none. */
export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;
}

/** `one / other`, run by run, so that what slows the machine for a while slows both. */
export function ratios(one: readonly number[], other: readonly number[]): number[] {
  return one.map((value, i) => value / (other[i] ?? NaN));
}

/** Milliseconds that a call takes. */
export function timed(call: () => unknown): number {
  const start = performance.now();
  call();
  return performance.now() - start;
}
