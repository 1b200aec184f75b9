import type { Frame } from '../hand/frame';
import { handBound } from './bound';
import { shapeCost } from './cost';
import { FoundShapes, type FoundShape } from './found';
import { fullness, SHAPE_CONSTANTS as K } from './ranking';
import type { StringChoice } from './strings';
import { countTones, type WantedChord } from './wanted';
import { bassCost, weigh } from './weigh';

/** The strings of a neck with what each can give, and what is asked of them together. */
export interface Search {
  /** By string, low-placed first. */
  readonly choices: readonly (readonly StringChoice[])[];
  readonly wanted: WantedChord;
  readonly frame: Frame;
  /** Shapes kept for each place of the lowest finger. */
  readonly most: number;
  readonly leastStrings: number | undefined;
  readonly reentrant: boolean;
}

/** Strings muted between two that sound: a hand keeps two silent, not more (engineering value). */
const MOST_INNER = 2;
const USUAL_LEAST = 3;
/** Frets between the thumb and the lowest finger; see `hand/fingering.ts`. */
const THUMB_REACH = 2;
const HAIR = 1e-6;

/**
 * Looks the neck over: once for open strings alone, and once for each fret that the lowest finger may stop, from the nut
 * up. The result is in the order of cost.
 * @param ceiling told what is found so far, in the order of cost: shapes that cost as much or more are not looked for in
 * what is left of the neck
 */
export function searchNeck(
  search: Search,
  ceiling: (found: readonly FoundShape[]) => number,
): readonly FoundShape[] {
  let all: readonly FoundShape[] = searchWindow(search, undefined, ceiling([]));
  let last = 0;
  for (const string of search.choices)
    for (const { fret, open } of string) if (!open) last = Math.max(last, fret);
  for (let low = search.frame.zero + 1; low <= last; low++) {
    const found = searchWindow(search, low, ceiling(all));
    if (found.length > 0) all = [...all, ...found].sort(byCost);
  }
  return all;
}

function byCost(a: FoundShape, b: FoundShape): number {
  return Math.round((a.cost - b.cost) / HAIR) || a.tie - b.tie;
}

/**
 * Every choice of strings whose lowest stopped fret is `low`, depth first from the low-placed string; given up as soon as
 * a needed tone cannot come any more, more fingers than a hand has are needed, or it can only be worse than what is kept.
 */
function searchWindow(
  { choices, wanted, frame, most, leastStrings, reentrant }: Search,
  low: number | undefined,
  ceiling: number,
): readonly FoundShape[] {
  const usable = choicesWithin(choices, frame, low);
  if (low !== undefined && !usable.some((string) => string.some(({ open, fret }) => !open && fret === low)))
    return [];
  const count = usable.length;
  // What the strings from one on can still give, and how low they can sound.
  const rest = new Array<number>(count + 1).fill(0);
  const restLow = new Array<number>(count + 1).fill(Infinity);
  for (let index = count - 1; index >= 0; index--) {
    const string = usable[index] ?? [];
    rest[index] = string.reduce((mask, choice) => mask | choice.mask, rest[index + 1] ?? 0);
    restLow[index] = string.reduce(
      (low, { lowest }) => Math.min(low, lowest),
      restLow[index + 1] ?? Infinity,
    );
  }
  const { required, optional, oneOf } = wanted;
  // Two on some courses.
  const tonesAString = usable.some((string) => string.some(({ mask }) => (mask & (mask - 1)) !== 0)) ? 2 : 1;
  if (required & ~(rest[0] ?? 0)) return [];
  const least = Math.max(1, leastStrings ?? Math.min(USUAL_LEAST, countTones(required | optional)));
  const mostFingers = frame.slide ? 1 : Math.min(frame.thumb ? 5 : 4, frame.caps.fingers ?? 5);
  const barres = frame.slide || frame.caps.barres !== false;
  const bound = handBound(frame, low, choices.length);
  const eachInner = frame.k.muted + K.innerMuted.value;
  const { strings: fullStrings, silentLow, silentHigh } = fullness(wanted);
  const eachPending = Math.min(silentHigh, eachInner);
  const found = new FoundShapes(most, ceiling);
  const chosen = new Array<StringChoice | undefined>(count).fill(undefined);

  /**
   * Chooses what string `index` does. `runs` are the barres that could still go on, a bit a fret above the lowest one;
   * `pending` strings were passed over since the last one that sounds.
   */
  const choose = (
    index: number,
    mask: number,
    sounding: number,
    stops: number,
    fingers: number,
    runs: number,
    pending: number,
    inner: number,
    highest: number,
    reached: boolean,
    bass: number,
  ): void => {
    if (required & ~(mask | (rest[index] ?? 0))) return;
    if (sounding + count - index < least) return;
    if (countTones(required & ~mask) > (count - index) * tonesAString) return;
    const low0 = sounding === 0 ? index : index - sounding - pending - inner;
    const most1 = sounding + count - index;
    let thin = low0 * silentLow + inner * K.innerMuted.value;
    if (most1 < fullStrings) thin += (fullStrings - most1) * K.thin.value;
    if (index === count) thin += pending * silentHigh;
    else if (sounding > 0) thin += pending * eachPending;
    const isBassSure = bass <= (restLow[index] ?? Infinity);
    const wrong = isBassSure && bass < Infinity ? bassCost(bass % 12, wanted, reentrant) : 0;
    const hand = bound(stops, fingers, sounding - stops, highest) + inner * frame.k.muted;
    const sure = hand + thin + wrong;
    if (sure >= found.worst || sure === Infinity) return;
    if (index === count) {
      if (low !== undefined && !reached) return;
      if (oneOf && !(mask & oneOf)) return;
      finish(hand);
      return;
    }
    const innerNow = sounding > 0 ? inner + pending : inner;
    for (const choice of innerNow > MOST_INNER ? [] : (usable[index] ?? [])) {
      const { open, fret, lowest } = choice;
      const now = mask | choice.mask;
      const lower = lowest < bass ? lowest : bass;
      chosen[index] = choice;
      if (open) {
        // An open string ends every barre that would lie over it.
        choose(index + 1, now, sounding + 1, stops, fingers, 0, 0, innerNow, highest, reached, lower);
        continue;
      }
      const bit = 1 << (fret - (low ?? 0));
      const used = barres && runs & bit ? fingers : fingers + 1;
      if (used > mostFingers) continue;
      // A lower string breaks the barres at higher frets.
      const left = (runs & (bit - 1)) | bit;
      const top = fret > highest ? fret : highest;
      const isLow = reached || fret === low;
      choose(index + 1, now, sounding + 1, stops + 1, used, left, 0, innerNow, top, isLow, lower);
    }
    chosen[index] = undefined;
    choose(index + 1, mask, sounding, stops, fingers, runs, pending + 1, inner, highest, reached, bass);
  };

  const finish = (leastHand: number): void => {
    const { extra, ...weighed } = weigh(chosen, wanted, reentrant);
    if (leastHand + extra >= found.worst) return;
    const hand = shapeCost(chosen, frame, found.worst - extra);
    if (!hand) return;
    found.add({ choices: [...chosen], ...weighed, ...hand, cost: hand.cost + extra });
  };

  choose(0, 0, 0, 0, 0, 0, 0, 0, 0, false, Infinity);
  return found.list;
}

/** What each string can give to a hand whose lowest finger is at a fret. */
function choicesWithin(
  choices: Search['choices'],
  frame: Frame,
  low: number | undefined,
): readonly (readonly StringChoice[])[] {
  const { x } = frame;
  const span = (frame.slide ? 0 : Math.min(frame.span, frame.widest)) + HAIR;
  const isNear = (fret: number, index: number): boolean => {
    if (low === undefined || fret < low) return false;
    if ((x[fret] ?? 0) - (x[low] ?? 0) <= span) return true;
    // The thumb may lie below the lowest finger, which the others are measured from.
    return frame.thumb && index > 0 && (x[fret] ?? 0) - (x[low + THUMB_REACH] ?? 0) <= span;
  };
  return choices.map((string, index) => string.filter(({ open, fret }) => open || isNear(fret, index)));
}
