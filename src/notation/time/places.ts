import { commonDivisor } from '../../music/fraction';

/** Columns a beat of bars that are read exactly. */
export const EVEN_COLUMNS: readonly number[] = [1, 2, 3, 4, 6, 8, 9, 12, 16, 24];

/** What a note in a bar that is not even costs: as much as the least plain place. */
export const UNEVEN_COST = 12;

/** What each note costs where the ends of bars lack columns. */
export const MISSING_COST = 1;

/** How plain a place in a beat is, by the denominator of its fraction: 1 a beat, 2 a half, and so on. */
const COST_BY_DENOMINATOR: ReadonlyMap<number, number> = new Map([
  [1, 0],
  [2, 1],
  [3, 2],
  [4, 2],
  [6, 4],
  [8, 5],
  [12, 8],
  [16, 8],
]);

const EVEN = new Uint8Array(25);
const COSTS: Uint8Array[] = [];
for (const perBeat of EVEN_COLUMNS) {
  EVEN[perBeat] = 1;
  COSTS[perBeat] = Uint8Array.from({ length: perBeat }, (_, column) => {
    const denominator = perBeat / commonDivisor(column, perBeat);
    return COST_BY_DENOMINATOR.get(denominator) ?? UNEVEN_COST;
  });
}
const NONE = new Uint8Array(0);

/** Columns a beat of a bar of so many columns, or 0 when it does not divide evenly. */
export function columnsABeat(columns: number, beats: number): number {
  if (columns <= 0 || columns % beats !== 0) return 0;
  const perBeat = columns / beats;
  return EVEN[perBeat] === 1 ? perBeat : 0;
}

/**
 * What a note costs in each column of a beat: 0 on the beat, 1 half-way, 2 on a quarter or third, 4 on a sixth, 5 on an
 * eighth, 8 on a twelfth or sixteenth, 12 elsewhere.
 * @example placeCosts(4) // 0 2 1 2
 */
export function placeCosts(perBeat: number): Uint8Array {
  return COSTS[perBeat] ?? NONE;
}
