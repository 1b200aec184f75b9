import type { HeldPlace } from './hold';

/** Where a slide player's bar lies. */
export interface StraightBar {
  /** As written. */
  readonly fret: number;
  /** Player's string numbers, `from` ≥ `to`. */
  readonly from: number;
  readonly to: number;
}

export interface BarAnswer {
  readonly bar: StraightBar | undefined;
  readonly letGo: readonly number[];
  readonly refused: readonly string[];
}

/**
 * One straight bar for some places: at the fret that gives most of what is struck, then most of what rings, then at
 * the lowest. What it cannot give is told where it is struck, and let go where it rings.
 * @param fromNut a written fret of a string, counted from the nut
 */
export function layBar(places: readonly HeldPlace[], fromNut: (place: HeldPlace) => number): BarAnswer {
  const stopped = places.filter(({ fret }) => fret > 0);
  let best: { weight: number; at: number } | undefined;
  for (const at of new Set(stopped.map(fromNut))) {
    const there = stopped.filter((place) => fromNut(place) === at);
    const weight = there.filter(({ struck }) => struck).length * 100 + there.length;
    if (!best || weight > best.weight || (weight === best.weight && at < best.at)) best = { weight, at };
  }
  if (!best) return { bar: undefined, letGo: [], refused: [] };
  const { at } = best;
  const given = stopped.filter((place) => fromNut(place) === at);
  // What only rings does not make the bar longer than what is struck needs, where the two do not fit together.
  const strings = given.map(({ string }) => string);
  const [from, to] = [Math.max(...strings), Math.min(...strings)];
  const fret = given[0]?.fret ?? 0;
  const letGo: number[] = [];
  const refused: string[] = [];
  for (const place of places) {
    if (given.includes(place)) continue;
    const { string, fret: written, struck } = place;
    const under = string < from && string > to;
    if (written === 0 && !under) continue;
    if (!struck) letGo.push(string);
    else if (written === 0) refused.push(`string ${string}, open (the bar covers strings ${to}–${from})`);
    else refused.push(`string ${string}, fret ${written} (the bar lies at fret ${fret})`);
  }
  return { bar: { fret, from, to }, letGo, refused };
}
