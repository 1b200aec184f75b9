/** What the candidates are ordered by. */
export interface Rank {
  readonly cost: number;
  readonly stepsOfRetuning: number;
  readonly stringsChanged: number;
  readonly halfSteps: number;
}

/** Sums of the same terms in another order differ by less than this. */
const SAME = 1e-6;

/** A cost free of the dust of binary fractions, so that equal costs are equal. */
export function cleanCost(cost: number): number {
  return Math.round(cost / SAME) * SAME;
}

/**
 * Easiest first; of equal costs the fewest steps of retuning, then the fewest strings changed, then the smallest
 * transposition, downwards before upwards. Candidates that are still equal keep their order.
 */
export function compareRanks(a: Rank, b: Rank): number {
  const byCost = a.cost === b.cost ? 0 : Math.round(a.cost / SAME) - Math.round(b.cost / SAME);
  return (
    byCost ||
    a.stepsOfRetuning - b.stepsOfRetuning ||
    a.stringsChanged - b.stringsChanged ||
    Math.abs(a.halfSteps) - Math.abs(b.halfSteps) ||
    a.halfSteps - b.halfSteps
  );
}
