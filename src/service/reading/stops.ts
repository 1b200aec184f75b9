/**
 * Where a character of the tab stands among the names.
 * @param stops as in `LineStops`; none where the line did not move
 * @example throughStops([5, 6], 7) // 8
 */
export function throughStops(stops: readonly number[], character: number): number {
  return through(stops, character, 0);
}

/** Where a character among the names stands in the tab: the other way round. */
export function backThroughStops(stops: readonly number[], character: number): number {
  return through(stops, character, 1);
}

function through(stops: readonly number[], character: number, from: 0 | 1): number {
  let at = -2;
  for (let next = 0; next < stops.length && (stops[next + from] ?? 0) <= character; next += 2) at = next;
  const start = stops[at + from] ?? 0;
  const goal = stops[at + 1 - from] ?? 0;
  const end = stops[at + 3 - from] ?? Infinity;
  return Math.min(goal + character - start, end);
}
