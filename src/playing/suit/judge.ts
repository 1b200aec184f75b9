import { frameOf } from '../hand/frame';
import { moveTable } from '../hand/handLayer';
import { ringingMoments, type RingingMoment } from '../hand/ringing';
import { momentsOf } from '../moments';
import type { Placement } from '../passage';
import { Bound, stepOf, type Step } from './bound';
import { Cheapest } from './cheapest';
import { targetFor } from './describe';
import { kindsOf, type Kinds } from './kinds';
import { openPlaceFinder } from './openPlaces';
import { chainsHold } from './chainsHold';
import { States } from './states';
import type { SuitRequest } from './suitAnswer';

/**
 * Judges one tuning after another of the same passage: whether it can be played, a cost that it cannot be under, its
 * least cost. What tunings have in common is worked out once. Costs are whole millionths.
 */
export class Judge {
  private readonly states = new States();
  private readonly kinds: Kinds;
  private readonly moments: readonly RingingMoment[];
  private readonly steps: readonly Step[];
  private readonly bound: Bound;
  private readonly cheapest: Cheapest;
  /** Whether notes joined over several moments must find one string that does for all: see `plays`. */
  readonly chained: boolean;
  private readonly hopeless: boolean;
  /** For each string the index of its half steps from the start. */
  private readonly offerOf: readonly ReadonlyMap<number, number>[];
  private readonly tuning: number[];
  private lastBound = 0;

  /** @param offers for each string the half steps from the start that it may be at */
  constructor(request: SuitRequest, offers: readonly (readonly number[])[]) {
    const { options } = request;
    const frame = frameOf(targetFor(request, request.start), options);
    const finder = openPlaceFinder(request, offers);
    const { moments: all, rejected } = momentsOf(request.notes, finder.find);
    const moments = ringingMoments(all);
    this.moments = moments;
    const counts = offers.map(({ length }) => length);
    this.offerOf = offers.map((own) => new Map(own.map((steps, index) => [steps, index])));
    this.tuning = offers.map(() => 0);
    this.hopeless = rejected.length > 0;
    this.kinds = kindsOf(moments, finder.byKey, frame, options.weights ?? {}, counts, this.states);
    const steps = new Map<number, Step>();
    this.steps = moments.map(({ onset }, at) => {
      const quarters = onset - (moments[at - 1]?.onset ?? onset);
      const seconds = Math.round(quarters * options.secondsPerQuarter * 1e6) / 1e6;
      let step = steps.get(seconds);
      if (!step) steps.set(seconds, (step = stepOf(moveTable(frame, seconds, steps.size))));
      return step;
    });
    this.bound = new Bound(this.kinds, this.steps, frame.highest + 1);
    this.cheapest = new Cheapest(this.kinds, this.steps, this.bound, this.states);
    this.chained = frame.thumb || moments.some(({ through, sources }) => through.length + sources.length > 0);
  }

  /**
   * No tuning costs less than this; Infinity: a moment cannot be played.
   * @param steps for each string the half steps from the start, each one of its offers
   * @param over whether to hand back
   */
  *lowerBound(steps: readonly number[], over: () => boolean): Generator<void, number> {
    if (this.hopeless) return Infinity;
    const { tuning } = this;
    for (let index = 0; index < tuning.length; index++) {
      const offer = this.offerOf[index]?.get(steps[index] ?? NaN);
      if (offer === undefined) throw new Error(`String ${index} has no offer of ${steps[index]} half steps.`);
      tuning[index] = offer;
    }
    for (let step = 0; step < this.bound.kindCount; step++) {
      if (!this.bound.gather(step, tuning)) return Infinity;
      if (over()) yield;
    }
    return (this.lastBound = this.bound.sweep());
  }

  /** Whether the tuning of the last `lowerBound` plays every note, joins and all. */
  plays(): boolean {
    return !this.chained || chainsHold(this.kinds, this.bound, this.states);
  }

  /**
   * The least cost in the tuning of the last `lowerBound`; Infinity when it is above the bar. A low bar is soon
   * searched, so bars a little above the bound are tried first.
   */
  *least(bar: number, over: () => boolean): Generator<void, number> {
    for (const near of NEAR) {
      const low = this.lastBound * near;
      if (low >= bar) break;
      const cost = yield* this.cheapest.of(low, over);
      if (cost < Infinity) return cost;
    }
    return yield* this.cheapest.of(bar, over);
  }

  /**
   * The way that the last `least` found, one state a moment; undefined where ways on other strings are equal to it in
   * everything, and which is taken is for the hand's own search to say.
   */
  wayFound(): readonly number[] | undefined {
    return this.cheapest.wayFound();
  }

  /** Where each note is on a way. */
  placements(way: readonly number[]): Placement[] {
    const strings = this.tuning.length;
    return this.moments.flatMap(({ own }, at) => {
      const places = this.kinds.kinds[this.kinds.of[at] ?? 0]?.placesIn(way[at] ?? 0) ?? [];
      return own.flatMap(({ note: { id } }, i) => {
        const place = places[i];
        if (!place) return [];
        const plain = { id, string: strings - place.index, fret: place.fret };
        return [place.touched === undefined ? plain : { ...plain, touched: place.touched }];
      });
    });
  }

  /**
   * Where each note is in the easiest way to play a tuning, the same as in the hand's own search; undefined where that
   * search must say.
   * @param steps for each string the half steps from the start
   * @param cost the least cost in that tuning
   */
  easiest(steps: readonly number[], cost: number): Placement[] | undefined {
    const never = (): boolean => false;
    finished(this.lowerBound(steps, never));
    finished(this.cheapest.of(cost, never));
    const way = this.wayFound();
    return way && this.placements(way);
  }
}

function finished<T>(work: Generator<void, T>): T {
  let step = work.next();
  while (step.done !== true) step = work.next();
  return step.value;
}

/** How far above the bound most costs lie. */
const NEAR = [1.3] as const;
