import { lossOf } from './leaveOut';
import type { Costs } from './costs';
import type { Item, Moment } from './moments';
import type { Neck } from './neck';
import type { Place } from './places';

/**
 * A node of the layered graph: what the hand does at one moment. States of one moment that no later move can tell
 * apart (same keys, same hand) are one state, the best of them.
 */
export interface State {
  /** What it takes for granted of the notes joined or held from before; equals the `outKey` of the state before. */
  readonly inKey: string;
  /** What the next moment must know: the strings of notes that are joined on. */
  readonly outKey: string;
  /** Hand position, in frets from the nut. */
  readonly hand: number;
  /** What is lost by notes left out; see `lossOf`. Always compared before the cost. */
  readonly loss: number;
  /** Node cost in thousandths of a millimetre. */
  readonly cost: number;
  /** Tie-break: sum of frets (of a harmonic its partial), then notes away from the string they came from. */
  readonly tie: number;
  /** For each of the moment's own notes its place; undefined when it is left out. */
  readonly places: readonly (Place | undefined)[];
}

/** What the player and the neck allow. */
export interface Hand {
  readonly neck: Neck;
  /** Thousandths of a millimetre. */
  readonly reach: number;
  readonly slide: boolean;
  readonly strings: number;
}

/** Weight of a fret against a changed string in a tie; more notes than this in one passage do not occur. */
const FRET_TIE = 2 ** 20;

/** What is taken for granted of an earlier note at the border before a moment. */
interface Bound {
  readonly key: string;
  /** Its place while it is held through the moment. */
  readonly held: Place | undefined;
}

/**
 * All states of a moment with at most `most` of its own notes left out, the best for each pair of keys and hand
 * position.
 */
export function statesOf(
  moment: Moment,
  at: number,
  next: Moment | undefined,
  hand: Hand,
  costs: Costs,
  most: number,
): State[] {
  const best = new Map<string, State[]>();
  const bounds: (Bound | undefined)[] = [];
  const places: (Place | undefined)[] = [];
  const taken: boolean[] = new Array<boolean>(hand.strings).fill(false);
  const widest = hand.slide ? 0 : hand.reach;
  let left = 0;

  const heldHere = moment.incoming.map((item) => item.follower !== undefined && item.follower.moment > at);

  /** Notes held through the moment keep their strings; those whose follower begins here take their bound from it. */
  const chooseHeld = (position: number, low: number, high: number): void => {
    const item = moment.incoming[position];
    if (!item) return chooseOwn(0, low, high);
    if (!heldHere[position]) return chooseHeld(position + 1, low, high);
    item.places.forEach((place, choice) => {
      if (taken[place.index]) return;
      const [lower, higher] = widened(place, low, high);
      if (higher - lower > widest) return;
      taken[place.index] = true;
      bounds[position] = { key: `c${choice}`, held: place };
      chooseHeld(position + 1, lower, higher);
      taken[place.index] = false;
    });
    if (most > 0) {
      bounds[position] = GIVEN_UP;
      chooseHeld(position + 1, low, high);
    }
  };

  const chooseOwn = (position: number, low: number, high: number): void => {
    const item = moment.own[position];
    if (!item) return finish(high);
    const source = item.source ? moment.incoming.indexOf(item.source) : -1;
    for (const place of item.places) {
      if (taken[place.index]) continue;
      const [lower, higher] = widened(place, low, high);
      if (higher - lower > widest) continue;
      taken[place.index] = true;
      places[position] = place;
      if (source >= 0) bounds[source] = { key: `s${place.index}`, held: undefined };
      chooseOwn(position + 1, lower, higher);
      taken[place.index] = false;
    }
    if (left < most) {
      left++;
      places[position] = undefined;
      if (source >= 0) bounds[source] = GIVEN_UP;
      chooseOwn(position + 1, low, high);
      left--;
    }
  };

  const finish = (high: number): void => {
    let lowFret = Infinity;
    let cost = 0;
    let tie = 0;
    for (const bound of bounds) lowFret = Math.min(lowFret, bound?.held?.stoppedFret ?? Infinity);
    moment.own.forEach((item, position) => {
      const place = places[position];
      if (!place) return;
      lowFret = Math.min(lowFret, place.stoppedFret ?? Infinity);
      if (place.stoppedFret !== undefined)
        cost += Math.round(costs.height * (place.position - hand.neck.zero));
      tie += place.tie * FRET_TIE;
      if (hand.strings - place.index !== item.note.string) tie += 1;
    });
    const inKey = bounds.map((bound) => bound?.key ?? '').join(' ');
    const parts = (next?.incoming ?? []).map((item) =>
      outParts(item, at + 1, moment, places, bounds, most > 0),
    );
    // Every join given up is a follower left out later, so there are no more of them than may be left out.
    const outKeys = combine(parts, most - left).map((ways) => ways.join(' '));
    if (outKeys.length === 0) return;
    const loss = left === 0 ? 0 : lossOf(moment, places);
    const offer = (position: number, extra: number): void => {
      const whole = cost + extra;
      for (const outKey of outKeys) {
        const bucket = bucketOf(best, `${inKey}>${outKey}`);
        const old = bucket[position];
        if (old && !better(loss, whole, tie, old)) continue;
        bucket[position] = { inKey, outKey, hand: position, loss, cost: whole, tie, places: [...places] };
      }
    };
    const { lowestHand, highestHand } = hand.neck;
    if (high === -Infinity) {
      for (let position = lowestHand; position <= highestHand; position++) offer(position, 0);
      return;
    }
    const top = Math.floor(lowFret);
    if (hand.slide) return offer(top, 0);
    for (let position = top; position >= Math.min(lowestHand, top); position--) {
      const span = high - hand.neck.position(position);
      // The lowest stopped place itself is always a position, whatever its span was found to be above.
      if (position < top && span > hand.reach) break;
      offer(position, Math.round(costs.stretch * Math.max(0, span - Math.round(costs.relaxed * 1000))));
    }
  };

  chooseHeld(0, Infinity, -Infinity);
  return [...best.values()].flatMap((bucket) => Object.values(bucket));
}

/** Whether a loss, a cost and a tie are better than those of a state, compared in that order. */
export function better(
  loss: number,
  cost: number,
  tie: number,
  than: { readonly loss: number; readonly cost: number; readonly tie: number },
): boolean {
  if (loss !== than.loss) return loss < than.loss;
  if (cost !== than.cost) return cost < than.cost;
  return tie < than.tie;
}

function bucketOf(best: Map<string, State[]>, key: string): State[] {
  const old = best.get(key);
  if (old) return old;
  const bucket: State[] = [];
  best.set(key, bucket);
  return bucket;
}

/**
 * A note that was left out, or one that was not but whose follower will be: it binds no string any more. A state offers
 * this beside its true key wherever notes may be left out, so a follower left out need only ask for this.
 */
const GIVEN_UP: Bound = { key: '-', held: undefined };

/** The stretch of stopped places, in thousandths of a millimetre from the nut, when one more is taken in. */
function widened(place: Place, low: number, high: number): readonly [number, number] {
  if (place.stoppedFret === undefined) return [low, high];
  return [Math.min(low, place.position), Math.max(high, place.position)];
}

/** What the key to the next moment may tell of one note: its place, its string, or that its join is given up. */
function outParts(
  item: Item,
  nextAt: number,
  moment: Moment,
  places: readonly (Place | undefined)[],
  bounds: readonly (Bound | undefined)[],
  mayMiss: boolean,
): string[] {
  const own = moment.own.indexOf(item);
  const place = own >= 0 ? places[own] : bounds[moment.incoming.indexOf(item)]?.held;
  if (!place) return [GIVEN_UP.key];
  const through = item.follower !== undefined && item.follower.moment > nextAt;
  const kept = through ? `c${item.places.indexOf(place)}` : `s${place.index}`;
  return mayMiss ? [kept, GIVEN_UP.key] : [kept];
}

/** Every way to take one of each, with at most `most` joins given up. */
function combine(choices: readonly (readonly string[])[], most: number): string[][] {
  let ways: string[][] = [[]];
  for (const choice of choices) {
    ways = ways.flatMap((way) => choice.map((part) => [...way, part]));
    ways = ways.filter((way) => way.filter((part) => part === GIVEN_UP.key).length <= most);
  }
  return ways;
}
