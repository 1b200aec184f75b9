import type { Frame } from '../hand/frame';

/** What is known of a shape before its fingers are: strings stopped, fewest fingers, open strings, highest fret. */
export type Bound = (stops: number, fingers: number, opens: number, highest: number) => number;

const MOST_FINGERS = 4;

/**
 * A bound below what any fingers on a shape can cost, and so below the cost of everything that it can become by further
 * strings: position, open strings under a high hand, fingers, a barre where strings outnumber fingers, and the stretch
 * from the lowest to the highest fret.
 * @param low the lowest stopped fret from the nut; undefined for open strings alone
 * @param strings how many there are
 */
export function handBound(frame: Frame, low: number | undefined, strings: number): Bound {
  const { k, x, zero } = frame;
  if (low === undefined) return () => 0;
  if (frame.slide) {
    const above = Math.max(0, low - zero - 1) * k.position;
    const high = Math.max(0, low - zero - 3) * k.openHigh;
    return (_, __, opens) => above + opens * high;
  }
  // The thumb may take one string and costs no more than a finger.
  const spared = frame.thumb ? 1 : 0;
  const size = strings + 1;
  const table = new Float64Array(size * size * (MOST_FINGERS + 1));
  for (let stops = 0; stops < size; stops++)
    for (let fingers = 0; fingers <= MOST_FINGERS; fingers++)
      for (let opens = 0; opens < size; opens++)
        table[(stops * (MOST_FINGERS + 1) + fingers) * size + opens] = leastOf(
          frame,
          low,
          Math.max(0, stops - spared),
          Math.max(0, fingers - spared),
          opens,
        );
  // Three steps lie between the first finger and the fourth.
  const reach = x.map((at, fret) => {
    if (frame.thumb || fret <= low) return 0;
    const wide = at - (x[low] ?? 0) - 3 * k.relaxed;
    return Math.max(0, wide / 10) * k.stretch + Math.max(0, fret - low - 3) * k.beyond;
  });
  return (stops, fingers, opens, highest) =>
    (table[(stops * (MOST_FINGERS + 1) + Math.min(MOST_FINGERS, fingers)) * size + opens] ?? 0) +
    (reach[highest] ?? 0);
}

/** The least cost of any number of fingers from the fewest on, the lowest of them any finger. */
function leastOf(
  { k, zero, lowest }: Frame,
  low: number,
  stops: number,
  fewest: number,
  opens: number,
): number {
  let least = Infinity;
  const leastBarre = Math.min(k.barre1, k.barre2, k.barre3, k.barre4);
  for (let fingers = fewest; fingers <= Math.min(MOST_FINGERS, Math.max(fewest, stops)); fingers++) {
    // Each string that has no finger of its own lies under a barre; one barre is cheaper than two.
    const barred = stops - fingers;
    const barre = barred > 0 && fingers > 0 ? leastBarre + (barred - 1) * k.barreString : 0;
    for (let first = 1; first + Math.max(1, fingers) - 1 <= MOST_FINGERS; first++) {
      const last = first + Math.max(1, fingers) - 1;
      const position = Math.max(lowest, low - (first - 1));
      let cost = barre + fingers * k.finger;
      cost += Math.max(0, position - zero - 1) * k.position;
      cost += Math.max(0, position - zero - 3) * k.openHigh * opens;
      if (fingers > 0 && first > 1) cost += k.noIndex;
      if (fingers > 0 && last > 2)
        cost += fingers === MOST_FINGERS ? k.finger3 + k.finger4 : Math.min(k.finger3, k.finger4);
      least = Math.min(least, cost);
    }
  }
  return least;
}
