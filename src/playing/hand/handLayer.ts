import { ANYTHING, type HandState } from './handStates';
import { exact, THUMB, type Frame } from './frame';

/** Fingers 1 to 4 and the thumb: one slot each in `HandLayer.fingers`. */
export const SLOTS = THUMB;

/**
 * The states of one moment, laid out in arrays for the search. Moments that are alike share one layer. Costs are
 * whole millionths.
 */
export interface HandLayer {
  /** Unique among the layers of one passage. */
  readonly id: number;
  readonly size: number;
  readonly states: readonly HandState[];
  readonly cost: Float64Array;
  readonly tie: Float64Array;
  /** Fret of the index finger, from the nut. */
  readonly position: Int32Array;
  /** 1 where a finger is down. */
  readonly down: Uint8Array;
  /** `SLOTS` a state: 0, or the finger's fret and the bits of its strings. */
  readonly fingers: Int32Array;
  /** How many fingers are down, and which slots they are: `SLOTS` a state, used ones first. */
  readonly used: Uint8Array;
  readonly usedSlots: Uint8Array;
  /** First and last string that is struck; 99 and −99 when none is. */
  readonly low: Int8Array;
  readonly high: Int8Array;
  /** Which of `needs` a state has, and which of `outs`. */
  readonly need: Int32Array;
  readonly out: Int32Array;
  readonly needs: readonly (readonly number[])[];
  readonly outs: readonly (readonly number[])[];
}

/** Which states may follow which, for one need of the later layer. */
export interface Match {
  /** Index into the earlier layer's `outs`. */
  readonly out: number;
  /** Notes let go on the way. */
  readonly cuts: number;
}

/** Builds the arrays of a layer. */
export function handLayer(id: number, states: readonly HandState[]): HandLayer {
  const size = states.length;
  const layer = {
    id,
    size,
    states,
    cost: new Float64Array(size),
    tie: new Float64Array(size),
    position: new Int32Array(size),
    down: new Uint8Array(size),
    fingers: new Int32Array(size * SLOTS),
    used: new Uint8Array(size),
    usedSlots: new Uint8Array(size * SLOTS),
    low: new Int8Array(size),
    high: new Int8Array(size),
    need: new Int32Array(size),
    out: new Int32Array(size),
  };
  const needs = new Numbering();
  const outs = new Numbering();
  states.forEach((state, at) => {
    const { grip } = state;
    layer.cost[at] = state.cost;
    layer.tie[at] = state.tie;
    layer.position[at] = grip.position;
    layer.down[at] = grip.stops.length > 0 ? 1 : 0;
    grip.stops.forEach((stop, i) => {
      const slot = at * SLOTS + (grip.fingers[i] ?? 1) - 1;
      layer.fingers[slot] = (layer.fingers[slot] ?? 0) | (stop.fret << 16) | (1 << stop.index);
    });
    let used = 0;
    for (let slot = 0; slot < SLOTS; slot++) {
      if ((layer.fingers[at * SLOTS + slot] ?? 0) !== 0) layer.usedSlots[at * SLOTS + used++] = slot;
    }
    layer.used[at] = used;
    layer.low[at] = grip.struck === 0 ? 99 : 31 - Math.clz32(grip.struck & -grip.struck);
    layer.high[at] = grip.struck === 0 ? -99 : 31 - Math.clz32(grip.struck);
    layer.need[at] = needs.of(state.need);
    layer.out[at] = outs.of(state.out);
  });
  return { ...layer, needs: needs.all, outs: outs.all };
}

/** For each need of a layer the outs of the one before that meet it. */
export function matchesOf(before: HandLayer, layer: HandLayer): readonly (readonly Match[])[] {
  return layer.needs.map((need) =>
    before.outs.flatMap((out, at) => {
      let cuts = 0;
      for (let i = 0; i < need.length; i++) {
        if (need[i] === ANYTHING) cuts += isRinging(layer, i) && (out[i] ?? 0) > 0 ? 1 : 0;
        else if (need[i] !== out[i]) return [];
      }
      return [{ out: at, cuts }];
    }),
  );
}

/** Joined notes come first in a need; letting them go is told as notes left out, not as a cut. */
function isRinging(layer: HandLayer, position: number): boolean {
  return position >= (layer.states[0]?.joined ?? 0);
}

class Numbering {
  readonly all: (readonly number[])[] = [];
  private readonly known = new Map<string, number>();

  of(codes: readonly number[]): number {
    const key = codes.join(' ');
    const old = this.known.get(key);
    if (old !== undefined) return old;
    this.known.set(key, this.all.length);
    return this.all.push(codes) - 1;
  }
}

/** What moves cost at one tempo: the way along the neck from place to place, and the rest of the terms. */
export interface MoveTable {
  /** Unique among the tables of one passage. */
  readonly id: number;
  /** `(highest + 1)²` entries. */
  readonly travel: Float64Array;
  readonly width: number;
  readonly shift: number;
  readonly freeShift: number;
  readonly setDown: number;
  readonly moved: number;
  readonly crossing: number;
  readonly cut: number;
}

/** The reference of the travel term: a millimetre in a quarter of a second. */
const REFERENCE_SECONDS = 0.25;

/** The costs of moves when there are so many seconds for them. @param id unique in the passage */
export function moveTable(frame: Frame, seconds: number, id: number): MoveTable {
  const { k, x } = frame;
  const width = frame.highest + 1;
  const travel = new Float64Array(width * width);
  const pace = (k.travel * REFERENCE_SECONDS) / Math.max(seconds, k.shortest);
  for (let from = 0; from < width; from++) {
    for (let to = 0; to < width; to++) {
      travel[from * width + to] = exact(Math.abs((x[from] ?? 0) - (x[to] ?? 0)) * pace);
    }
  }
  return {
    id,
    travel,
    width,
    shift: frame.slide ? 0 : exact(k.shift),
    freeShift: frame.slide ? 0 : exact(k.freeShift),
    setDown: frame.slide ? 0 : exact(k.setDown),
    moved: frame.slide ? 0 : exact(k.moved),
    crossing: exact(k.crossing),
    cut: exact(k.cut),
  };
}

const STRING_BITS = 0xffff;

/** The cost of the move from one state to another, notes let go not counted; millionths, never below 0. */
export function moveCost(a: HandLayer, i: number, b: HandLayer, j: number, table: MoveTable): number {
  const from = a.position[i] ?? 0;
  const to = b.position[j] ?? 0;
  let cost = 0;
  if (from !== to) {
    cost = (table.travel[from * table.width + to] ?? 0) + (a.down[i] === 1 ? table.shift : table.freeShift);
  }
  const count = b.used[j] ?? 0;
  for (let n = 0; n < count; n++) {
    const slot = b.usedSlots[j * SLOTS + n] ?? 0;
    const now = b.fingers[j * SLOTS + slot] ?? 0;
    const was = a.fingers[i * SLOTS + slot] ?? 0;
    if (was === 0) cost += table.setDown;
    else if (was >> 16 !== now >> 16 || (was & now & STRING_BITS) === 0) cost += table.moved;
  }
  const gap = Math.max((b.low[j] ?? 0) - (a.high[i] ?? 0), (a.low[i] ?? 0) - (b.high[j] ?? 0));
  // Where a moment strikes nothing, one of the two is past every string.
  if (gap > 0 && gap < 50) cost += gap * table.crossing;
  return cost;
}
