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
  /** Tie-break: sum of frets, then notes away from the string they came from. */
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

/** A value for an earlier note at the border between two moments: its place when held, its string when joined. */
interface Bound {
  readonly key: string;
  readonly index: number | undefined;
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
  let left = 0;

  const chooseIncoming = (position: number): void => {
    const item = moment.incoming[position];
    if (!item) return chooseOwn(0);
    const through = item.follower !== undefined && item.follower.moment > at;
    for (const bound of boundsOf(item, through, most > 0)) {
      if (through && bound.index !== undefined) {
        if (taken[bound.index]) continue;
        taken[bound.index] = true;
      }
      bounds[position] = bound;
      chooseIncoming(position + 1);
      if (through && bound.index !== undefined) taken[bound.index] = false;
    }
  };

  const chooseOwn = (position: number): void => {
    const item = moment.own[position];
    if (!item) return finish();
    const source = item.source ? bounds[moment.incoming.indexOf(item.source)] : undefined;
    for (const place of item.places) {
      if (taken[place.index] || (item.source && source?.index !== place.index)) continue;
      taken[place.index] = true;
      places[position] = place;
      chooseOwn(position + 1);
      taken[place.index] = false;
    }
    if (left < most) {
      left++;
      places[position] = undefined;
      chooseOwn(position + 1);
      left--;
    }
  };

  const finish = (): void => {
    let low = Infinity;
    let lowFret = Infinity;
    let high = -Infinity;
    let cost = 0;
    let tie = 0;
    const stop = (place: Place): void => {
      if (place.stoppedFret === undefined) return;
      low = Math.min(low, place.position);
      high = Math.max(high, place.position);
      lowFret = Math.min(lowFret, place.stoppedFret);
    };
    for (const bound of bounds) if (bound?.held) stop(bound.held);
    moment.own.forEach((item, position) => {
      const place = places[position];
      if (!place) return;
      stop(place);
      if (place.stoppedFret !== undefined)
        cost += Math.round(costs.height * (place.position - hand.neck.zero));
      tie += (place.touched ?? place.fret) * FRET_TIE;
      if (hand.strings - place.index !== item.note.string) tie += 1;
    });
    if (high - low > (hand.slide ? 0 : hand.reach)) return;
    const inKey = keyOf(bounds.map((bound) => bound?.key ?? ''));
    const parts = (next?.incoming ?? []).map((item) =>
      outParts(item, at + 1, moment, places, bounds, most > 0),
    );
    const outKeys = combine(parts).map(keyOf);
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

  chooseIncoming(0);
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

/** A note left out, or one whose follower will be: it binds no string any more. */
const LEFT_OUT: Bound = { key: '-', index: undefined, held: undefined };

/** What may be true of an earlier note when its moment has passed. */
function boundsOf(item: Item, through: boolean, mayMiss: boolean): Bound[] {
  const found: Bound[] = through
    ? item.places.map((place, choice) => ({ key: `c${choice}`, index: place.index, held: place }))
    : [...new Set(item.places.map((place) => place.index))].map((index) => ({
        key: `s${index}`,
        index,
        held: undefined,
      }));
  if (mayMiss) found.push(LEFT_OUT);
  return found;
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
  if (!place) return [LEFT_OUT.key];
  const through = item.follower !== undefined && item.follower.moment > nextAt;
  const kept = through ? `c${item.places.indexOf(place)}` : `s${place.index}`;
  return mayMiss ? [kept, LEFT_OUT.key] : [kept];
}

/** Every way to take one of each. */
function combine(choices: readonly (readonly string[])[]): string[][] {
  return choices.reduce<string[][]>(
    (ways, choice) => ways.flatMap((way) => choice.map((part) => [...way, part])),
    [[]],
  );
}

function keyOf(parts: readonly string[]): string {
  return parts.join(' ');
}
