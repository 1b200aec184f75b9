import type { Frame } from '../hand/frame';

/** What is known of a shape before its fingers are. */
export interface Sketch {
  /** Strings stopped, and the least number of fingers that can stop them. */
  readonly stops: number;
  readonly fingers: number;
  readonly opens: number;
  /** Highest stopped fret from the nut; 0 where nothing is stopped. */
  readonly highest: number;
}

/**
 * A bound below what any fingers on a shape can cost, and so below the cost of everything that it can become by further
 * strings: position, open strings under a high hand, fingers, a barre where strings outnumber fingers, and the stretch
 * from the lowest to the highest fret.
 * @param low the lowest stopped fret from the nut; undefined for open strings alone
 */
export function handBound(
  frame: Frame,
  low: number | undefined,
): (stops: number, fingers: number, opens: number, highest: number) => number {
  const { k, x, zero, lowest } = frame;
  if (low === undefined) return () => 0;
  if (frame.slide) {
    const above = Math.max(0, low - zero - 1) * k.position;
    const high = Math.max(0, low - zero - 3) * k.openHigh;
    return (_, __, opens) => above + opens * high;
  }
  const least = frame.thumb ? 1 : 0;
  // What the place of the hand costs at least, by how many fingers are down and how many strings ring.
  const places = [0, 1, 2, 3, 4].map((fingers) =>
    Array.from({ length: 16 }, (_, opens) => {
      let cost = Infinity;
      for (let first = 1; first <= Math.max(1, 5 - fingers); first++) {
        const position = Math.max(lowest, low - (first - 1));
        const above = Math.max(0, position - zero - 1) * k.position;
        const high = Math.max(0, position - zero - 3) * k.openHigh * opens;
        const last = first + Math.max(fingers, 1) - 1;
        const own = (first > 1 ? k.noIndex : 0) + (last > 2 ? Math.min(k.finger3, k.finger4) : 0);
        cost = Math.min(cost, above + high + own);
      }
      return cost;
    }),
  );
  // Three steps lie between the first finger and the fourth.
  const reach = x.map((at) => {
    const wide = at - (x[low] ?? 0) - 3 * k.relaxed;
    return frame.thumb || wide <= 0 ? 0 : (wide / 10) * k.stretch;
  });
  const leastBarre = Math.min(k.barre1, k.barre2, k.barre3, k.barre4);
  return (stops, fingers, opens, highest) => {
    const down = Math.max(0, fingers - least);
    let cost = (places[Math.min(4, down)]?.[opens] ?? 0) + down * k.finger;
    if (down >= 4) cost += Math.max(k.finger3, k.finger4);
    const barred = stops - 4 - least;
    if (barred > 0) cost += leastBarre + (barred - 1) * k.barreString;
    if (highest > low) {
      cost += reach[highest] ?? 0;
      if (!frame.thumb && highest - low > 3) cost += (highest - low - 3) * k.beyond;
    }
    return cost;
  };
}
