/**
 * A capo. Under a full capo tab is counted from the capo; under a partial one always from the nut.
 */
export interface Capo {
  readonly fret: number;
  /** String numbers that a partial capo covers; undefined for a full capo. A capo on every string is full. */
  readonly strings: readonly number[] | undefined;
}
