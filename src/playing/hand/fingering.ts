import type { FingerCosts } from './fingerCosts';
import { THUMB, type Frame } from './frame';

/** A string pressed down at a fret, counted from the nut. */
export interface Stop {
  /** Index of the string, low-placed string first. */
  readonly index: number;
  readonly fret: number;
}

/** Millimetres are compared with this much room for rounding. */
const HAIR = 1e-6;
const MOST_FINGERS = 4;
/** Strings of a barre that goes on to the next string at its fret. */
const LONG_BARRE = 4;

/**
 * Every way to put fingers on stops, as the hard rules allow: a finger has one fret; higher fingers never stand lower;
 * two fingers are no farther apart than their limit; a finger on several strings is a barre, with no open and no
 * lower string between its ends and no other finger at its fret between them; and a barre of four strings or more
 * takes the next string at its fret as well: no player sets another finger beside a barre that could go on (common
 * practice, no source).
 * @param opens bits of the strings that ring open
 * @param give called with the finger of each stop; the array is used again, copy it
 * @param inOrder leaves out ways in which a higher finger stops the lower-placed of two strings at one fret. Crossing
 * them has the same places and, as long as `order` outweighs the difference between two barres, costs more.
 * @param costs leaves out ways that cost too much, with `inOrder`
 */
export function eachFingering(
  stops: readonly Stop[],
  opens: number,
  frame: Frame,
  give: (fingers: readonly number[]) => void,
  inOrder = false,
  costs?: FingerCosts,
): void {
  if (span(stops, frame) > frame.span + HAIR) return;
  const order = stops.map((_, at) => at).sort((a, b) => fretAt(a) - fretAt(b) || indexAt(a) - indexAt(b));
  const fingers: number[] = new Array<number>(stops.length).fill(0);
  const fretOf = [0, 0, 0, 0, 0, 0];
  const low = [0, 0, 0, 0, 0, 0];
  const high = [0, 0, 0, 0, 0, 0];
  const held = [0, 0, 0, 0, 0, 0];
  const most = Math.min(MOST_FINGERS + (frame.thumb ? 1 : 0), frame.caps.fingers ?? THUMB);
  const barres = frame.caps.barres !== false;

  function fretAt(at: number): number {
    return stops[at]?.fret ?? 0;
  }
  function indexAt(at: number): number {
    return stops[at]?.index ?? 0;
  }

  const fits = (finger: number, fret: number): boolean => {
    for (let other = 1; other <= MOST_FINGERS; other++) {
      const there = fretOf[other] ?? 0;
      if (there === 0 || other === finger) continue;
      if (other < finger ? there > fret : there < fret) return false;
      const limit =
        (other < finger ? frame.limits[other]?.[finger] : frame.limits[finger]?.[other]) ?? Infinity;
      if (Math.abs((frame.x[fret] ?? 0) - (frame.x[there] ?? 0)) > limit + HAIR) return false;
    }
    return true;
  };

  // From each position on: frets that need a finger of their own, whatever went before.
  const fretsLeft = new Array<number>(order.length + 1).fill(0);
  for (let at = order.length - 1; at >= 0; at--)
    fretsLeft[at] =
      (fretsLeft[at + 1] ?? 0) + (at > 0 && fretAt(order[at] ?? 0) === fretAt(order[at - 1] ?? 0) ? 0 : 1);
  const isTooMuch = (position: number, sum: number): boolean =>
    costs !== undefined && sum + (fretsLeft[position] ?? 0) * costs.finger >= costs.limit();
  const sumWith = (sum: number, finger: number, fret: number, strings: number): number => {
    if (!costs) return 0;
    let below = finger - 1;
    while (below > 0 && (fretOf[below] ?? 0) === 0) below--;
    return sum + costs.add(finger, fret, strings, below, fretOf[below] ?? 0);
  };

  const choose = (position: number, used: number, sum: number): void => {
    const at = order[position];
    if (at === undefined) {
      if (legal(stops, fingers, opens, low, high, fretOf)) give(fingers);
      return;
    }
    const fret = fretAt(at);
    const index = indexAt(at);
    const before = inOrder ? (fingers[order[position - 1] ?? -1] ?? 1) : 1;
    for (let finger = before === THUMB ? 1 : before; finger <= MOST_FINGERS; finger++) {
      const there = fretOf[finger] ?? 0;
      if (there === fret && there > 0) {
        // Strings come in order within a fret, and a barre has no other finger of its fret between.
        if (!barres || fingers[order[position - 1] ?? -1] !== finger) continue;
        const [oldLow = 0, oldHigh = 0] = [low[finger], high[finger]];
        const now = sumWith(sum, finger, fret, (held[finger] ?? 0) + 1);
        if (isTooMuch(position + 1, now)) continue;
        low[finger] = Math.min(oldLow, index);
        high[finger] = Math.max(oldHigh, index);
        fingers[at] = finger;
        held[finger] = (held[finger] ?? 0) + 1;
        choose(position + 1, used, now);
        held[finger] = (held[finger] ?? 0) - 1;
        low[finger] = oldLow;
        high[finger] = oldHigh;
      } else if (there === 0 && used < most && fits(finger, fret)) {
        const now = sumWith(sum, finger, fret, 1);
        if (isTooMuch(position + 1, now)) continue;
        fretOf[finger] = fret;
        low[finger] = high[finger] = index;
        fingers[at] = finger;
        held[finger] = 1;
        choose(position + 1, used + 1, now);
        fretOf[finger] = 0;
      }
    }
    if (frame.thumb && index === 0 && used < most) {
      fretOf[THUMB] = fret;
      fingers[at] = THUMB;
      choose(position + 1, used + 1, sum + (costs?.finger ?? 0));
      fretOf[THUMB] = 0;
    }
  };

  choose(0, 0, 0);
}

/** What can only be seen when all fingers are down: barres, and the thumb's distance from the fingers. */
function legal(
  stops: readonly Stop[],
  fingers: readonly number[],
  opens: number,
  low: readonly number[],
  high: readonly number[],
  fretOf: readonly number[],
): boolean {
  for (let finger = 1; finger <= MOST_FINGERS; finger++) {
    const fret = fretOf[finger] ?? 0;
    const from = low[finger] ?? 0;
    const to = high[finger] ?? 0;
    if (fret === 0 || from === to) continue;
    for (let index = from + 1; index < to; index++) if ((opens >> index) & 1) return false;
    for (let at = 0; at < stops.length; at++) {
      const stop = stops[at];
      if (!stop || fingers[at] === finger) continue;
      const beside = stop.index === from - 1 || stop.index === to + 1;
      if (beside && stop.fret === fret && to - from + 1 >= LONG_BARRE && fingers[at] !== THUMB) return false;
      if (stop.index > from && stop.index < to && stop.fret <= fret) return false;
    }
  }
  const thumb = fretOf[THUMB] ?? 0;
  if (thumb === 0) return true;
  const lowest = lowestFinger(fretOf);
  return lowest !== undefined && Math.abs((fretOf[lowest] ?? 0) - thumb) <= THUMB_REACH;
}

/** Frets between the thumb and the lowest finger (common practice, from memory). */
const THUMB_REACH = 2;

function lowestFinger(fretOf: readonly number[]): number | undefined {
  for (let finger = 1; finger <= MOST_FINGERS; finger++) if (fretOf[finger]) return finger;
  return undefined;
}

/** Millimetres along the neck between the lowest and the highest stop. */
export function span(stops: readonly Stop[], frame: Frame): number {
  if (stops.length < 2) return 0;
  let low = Infinity;
  let high = 0;
  for (const { fret } of stops) {
    low = Math.min(low, fret);
    high = Math.max(high, fret);
  }
  return (frame.x[high] ?? 0) - (frame.x[low] ?? 0);
}

/**
 * Where the index finger is, or would be: the fret of finger 1; without one, as many frets below the lowest finger as
 * that is fingers above it, but never behind the nut or capo. Undefined when no finger is down.
 */
export function indexPosition(
  stops: readonly Stop[],
  fingers: readonly number[],
  frame: Frame,
): number | undefined {
  let lowest = THUMB;
  let fret = 0;
  for (let at = 0; at < stops.length; at++) {
    const finger = fingers[at] ?? THUMB;
    if (finger >= lowest) continue;
    lowest = finger;
    fret = stops[at]?.fret ?? 0;
  }
  if (lowest === THUMB) return undefined;
  return Math.max(frame.lowest, fret - (lowest - 1));
}
