import type { Frame } from './frame';

/** Lets fingers be given up before all are down; goes with `inOrder`, where each finger stands above those before it. */
export interface FingerCosts {
  /**
   * What a finger adds for certain as it stops a string.
   * @param strings how many strings it stops now, 1 as it goes down
   * @param below the next lower finger that is down, 0 for none
   */
  add(finger: number, fret: number, strings: number, below: number, belowFret: number): number;
  /** The least that a further finger adds. */
  readonly finger: number;
  /** Ways that cost as much or more are left out. */
  limit(): number;
}

const BARRES = ['barre1', 'barre1', 'barre2', 'barre3', 'barre4'] as const;

/**
 * The terms of `gripCost.ts` for a shape by itself that are told as fingers go down; the others only add to them.
 * @param opens how many strings ring open
 * @param limit what costs as much or more is of no use, in the hand's unit; asked anew for each finger
 */
export function sureCosts({ k, x, zero, lowest }: Frame, opens: number, limit: () => number): FingerCosts {
  return {
    finger: k.finger,
    limit,
    add(finger, fret, strings, below, belowFret) {
      if (strings > 1) return strings === 2 ? k[BARRES[finger] ?? 'barre1'] : k.barreString;
      let cost = k.finger;
      if (finger === 3) cost += k.finger3;
      if (finger === 4) cost += k.finger4;
      if (below === 0) {
        const above = Math.max(lowest, fret - (finger - 1)) - zero;
        if (above > 1) cost += (above - 1) * k.position;
        if (above > 3) cost += (above - 3) * k.openHigh * opens;
        return finger === 1 ? cost : cost + k.noIndex;
      }
      const steps = finger - below;
      const frets = fret - belowFret;
      const wide = (x[fret] ?? 0) - (x[belowFret] ?? 0) - k.relaxed * steps;
      if (wide > 0) cost += (wide / 10) * k.stretch;
      if (frets > steps) cost += (frets - steps) * k.beyond;
      const skipped = steps - 1 - Math.max(0, frets - 1);
      return skipped > 0 ? cost + skipped * k.skipped : cost;
    },
  };
}
