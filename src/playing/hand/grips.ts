import { neckOf } from '../neck';
import { placesOf, type Place } from '../places';
import type { Target } from '../target';
import type { HandConstantName } from './constants';
import { eachFingering, indexPosition, span, type Stop } from './fingering';
import { frameOf, THUMB, type Frame } from './frame';
import { eachTerm, type HeldGrip } from './gripCost';
import type { Finger } from './handAnswer';
import { handPlaceFinder } from './handPlaces';
import { fingerName } from './handStates';
import type { HandOptions } from './options';
import { refusals } from './refusals';

/** What the hand holds at one moment. */
export interface Grip {
  /** In the order in which the pitches or places were given. */
  readonly placements: readonly GripPlace[];
  /** Fret of the index finger, counted as frets are written; 1 when nothing is stopped. */
  readonly position: number;
  /** As a shape by itself: every term at its full weight. */
  readonly cost: number;
  /** What the cost is made of, dearest first; terms that are 0 are left out. */
  readonly terms: readonly GripTerm[];
  readonly barres: readonly Barre[];
  /** Between the lowest and the highest stopped fret, along the neck. */
  readonly millimetres: number;
}

export interface GripPlace {
  /** Player's string number. */
  readonly string: number;
  /** As frets are written. */
  readonly fret: number;
  readonly finger: Finger;
}

export interface GripTerm {
  readonly name: HandConstantName;
  /** How often, or how much, in the unit of the constant. */
  readonly amount: number;
  readonly cost: number;
}

/** One finger across strings at one fret. */
export interface Barre {
  readonly finger: 1 | 2 | 3 | 4;
  readonly fret: number;
  /** Player's string numbers, `from` > `to`. */
  readonly from: number;
  readonly to: number;
}

/**
 * All grips that sound some pitches at once and that the hand can hold, one for each set of places with its best
 * fingers, best first; of equals the one with the lower frets.
 * @param midis sounding MIDI numbers; equal ones sound on as many strings
 * @example gripsFor([48, 52, 55, 60, 64], standard, handOptions())[0] // x32010
 */
export function gripsFor(midis: readonly number[], target: Target, options: HandOptions): readonly Grip[] {
  const frame = frameOf(target, options);
  const find = handPlaceFinder(target, options);
  const choices = midis.map((midi, id) => {
    const note = {
      id,
      midi,
      onset: 0,
      end: 1,
      string: 0,
      joinedTo: undefined,
      need: 'any' as const,
      reaches: [],
    };
    return find(note).found.places;
  });
  // Equal pitches one after the other, so that the same places the other way round are met but once.
  const order = midis.map((_, at) => at).sort((a, b) => (midis[a] ?? 0) - (midis[b] ?? 0) || a - b);
  const chosen: Place[] = [];
  const found: Grip[] = [];
  const widest = frame.thumb ? Infinity : frame.slide ? 0 : frame.widest;
  const choose = (step: number, taken: number, low: number, high: number): void => {
    const at = order[step];
    const places = choices[at ?? -1];
    if (at === undefined || !places) {
      const grip = bestGrip(chosen, frame);
      if (grip) found.push(grip);
      return;
    }
    const before = order[step - 1] ?? -1;
    const twin = midis[at] === midis[before] ? chosen[before] : undefined;
    for (const place of places) {
      if ((taken >> place.index) & 1 || (twin && place.index < twin.index)) continue;
      const l = Math.min(low, place.stoppedFret ?? low);
      const h = Math.max(high, place.stoppedFret ?? high);
      if (h > l && (frame.x[h] ?? 0) - (frame.x[l] ?? 0) > widest + 1e-6) continue;
      chosen[at] = place;
      choose(step + 1, taken | (1 << place.index), l, h);
    }
  };
  choose(0, 0, Infinity, -Infinity);
  return found.sort(
    (a, b) =>
      Math.round((a.cost - b.cost) * 1e6) || fretSum(a) - fretSum(b) || keyOf(a).localeCompare(keyOf(b)),
  );
}

/**
 * The best fingers for given places, or by what rules there are none, with the figures.
 * @param places strings by player's number, frets as they are written
 * @example fingerGrip([{ string: 5, fret: 1 }, { string: 2, fret: 6 }], standard, handOptions()).refused
 *   // ['strings 5 and 2, frets 1 and 6: 153 mm, the limit is 130']
 */
export function fingerGrip(
  places: readonly { readonly string: number; readonly fret: number }[],
  target: Target,
  options: HandOptions,
): { readonly best: Grip | undefined; readonly refused: readonly string[] } {
  const frame = frameOf(target, options);
  const neck = neckOf(target);
  const found: Place[] = [];
  const missing: string[] = [];
  for (const { string, fret } of places) {
    const index = frame.strings - string;
    const midi = target.fingerboard.pitches(index, fret)?.[0];
    const note = {
      id: 0,
      midi,
      onset: 0,
      end: 1,
      string,
      joinedTo: undefined,
      need: 'any' as const,
      reaches: [],
    };
    const place =
      midi === undefined ? undefined : placesOf(note, target, neck).places.find((one) => one.index === index);
    if (found.some((other) => other.index === index)) missing.push(`string ${string} is given twice`);
    else if (place) found.push(place);
    else missing.push(`string ${string} has no fret ${fret} that can be played`);
  }
  if (missing.length > 0) return { best: undefined, refused: missing };
  const best = bestGrip(found, frame);
  return best ? { best, refused: [] } : { best: undefined, refused: refusals(found, frame) };
}

/** The least-cost fingers on some places; undefined when no fingers can hold them. */
function bestGrip(places: readonly Place[], frame: Frame): Grip | undefined {
  const stops: Stop[] = [];
  let opens = 0;
  let busy = 0;
  for (const { index, stoppedFret } of places) {
    busy |= 1 << index;
    if (stoppedFret === undefined) opens |= 1 << index;
    else stops.push({ index, fret: stoppedFret });
  }
  const base = { stops, opens, struck: busy, busy };
  let best: HeldGrip | undefined;
  let least = Infinity;
  const offer = (used: readonly number[]): void => {
    const grip = { ...base, fingers: [...used], position: indexPosition(stops, used, frame) ?? frame.lowest };
    const cost = costOf(grip, frame);
    if (cost >= least - 1e-9) return;
    [best, least] = [grip, cost];
  };
  if (frame.slide) {
    const frets = new Set(stops.map(({ fret }) => fret));
    if (frets.size <= 1 && !opensUnderBar(stops, opens)) offer(stops.map(() => 1));
  } else eachFingering(stops, opens, frame, offer);
  return best && gripOf(places, best, frame);
}

function opensUnderBar(stops: readonly Stop[], opens: number): boolean {
  const indices = stops.map(({ index }) => index);
  for (let index = Math.min(...indices) + 1; index < Math.max(...indices); index++)
    if ((opens >> index) & 1) return true;
  return false;
}

function costOf(grip: HeldGrip, frame: Frame): number {
  let cost = 0;
  eachTerm(grip, 'shape', frame, (name, amount, share) => (cost += frame.k[name] * amount * share));
  return cost;
}

function gripOf(places: readonly Place[], grip: HeldGrip, frame: Frame): Grip {
  const fingerAt = (index: number): number =>
    grip.fingers[grip.stops.findIndex((stop) => stop.index === index)] ?? 0;
  const sums = new Map<HandConstantName, { amount: number; cost: number }>();
  eachTerm(grip, 'shape', frame, (name, amount, share) => {
    const old = sums.get(name) ?? { amount: 0, cost: 0 };
    sums.set(name, { amount: old.amount + amount, cost: old.cost + frame.k[name] * amount * share });
  });
  const terms = [...sums].map(([name, { amount, cost }]) => ({ name, amount, cost }));
  return {
    placements: places.map(({ index, fret }) => ({
      string: frame.strings - index,
      fret,
      finger: fingerName(fingerAt(index)),
    })),
    position: grip.position - frame.zero,
    cost: terms.reduce((sum, { cost }) => sum + cost, 0),
    terms: terms.filter(({ cost }) => cost !== 0).sort((a, b) => b.cost - a.cost),
    barres: frame.slide ? [] : barresOf(places, grip, frame),
    millimetres: span(grip.stops, frame),
  };
}

function barresOf(places: readonly Place[], grip: HeldGrip, frame: Frame): Barre[] {
  const barres: Barre[] = [];
  for (let finger = 1; finger < THUMB; finger++) {
    const at = grip.stops.filter((_, i) => grip.fingers[i] === finger).map(({ index }) => index);
    const name = fingerName(finger);
    if (at.length < 2 || name === 0 || name === 'T') continue;
    const fret = places.find(({ index }) => index === at[0])?.fret ?? 0;
    barres.push({
      finger: name,
      fret,
      from: frame.strings - Math.min(...at),
      to: frame.strings - Math.max(...at),
    });
  }
  return barres;
}

function fretSum({ placements }: Grip): number {
  return placements.reduce((sum, { fret }) => sum + fret, 0);
}

function keyOf({ placements }: Grip): string {
  return placements.map(({ string, fret }) => `${string}:${fret}`).join(' ');
}
