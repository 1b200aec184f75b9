/** What the candidates are ordered by. */
export interface Rank {
  readonly cost: number;
  readonly stepsOfRetuning: number;
  readonly stringsChanged: number;
  /** Transposition. */
  readonly halfSteps: number;
}

/** A retuning of the start, with a transposition. */
export interface Candidate extends Rank {
  /** Half steps for each string of the start, low string first. */
  readonly steps: readonly number[];
}

/**
 * Easiest first; of equal costs the fewest steps of retuning, then the fewest strings changed, then the smallest
 * transposition, downwards before upwards.
 */
export function compareRanks(a: Rank, b: Rank): number {
  const byCost = a.cost === b.cost ? 0 : a.cost - b.cost;
  return (
    byCost ||
    a.stepsOfRetuning - b.stepsOfRetuning ||
    a.stringsChanged - b.stringsChanged ||
    Math.abs(a.halfSteps) - Math.abs(b.halfSteps) ||
    a.halfSteps - b.halfSteps
  );
}

/** The same order; of candidates equal in all of that the one that is lower on the lowest string. Never 0 for two. */
export function compareCandidates(a: Candidate, b: Candidate): number {
  const byRank = compareRanks(a, b);
  if (byRank !== 0) return byRank;
  const at = a.steps.findIndex((by, index) => by !== b.steps[index]);
  return at < 0 ? 0 : (a.steps[at] ?? 0) - (b.steps[at] ?? 0);
}

/** What rank a retuning has at some cost. */
export function candidateOf(steps: readonly number[], halfSteps: number, cost: number): Candidate {
  return {
    steps,
    halfSteps,
    cost,
    stepsOfRetuning: steps.reduce((sum, by) => sum + Math.abs(by), 0),
    stringsChanged: steps.filter((by) => by !== 0).length,
  };
}
