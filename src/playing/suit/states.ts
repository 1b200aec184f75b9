import { SLOTS, type HandLayer } from '../hand/handLayer';
import type { HandState } from '../hand/handStates';

/**
 * All states of all moments and tunings, one after the other in arrays that grow: small blocks by the tens of thousands
 * would cost more to lay out one by one than to search. Laid out as `HandLayer` says, so that `moveCost` reads it;
 * `need` and `out` are numbered by the kind of moment.
 */
export class States implements HandLayer {
  readonly id = 0;
  size = 0;
  cost = new Float64Array(FIRST);
  tie = new Float64Array(FIRST);
  position = new Int32Array(FIRST);
  down = new Uint8Array(FIRST);
  fingers = new Int32Array(FIRST * SLOTS);
  used = new Uint8Array(FIRST);
  usedSlots = new Uint8Array(FIRST * SLOTS);
  low = new Int8Array(FIRST);
  high = new Int8Array(FIRST);
  need = new Int32Array(FIRST);
  out = new Int32Array(FIRST);
  /** Nobody asks what they were made from. */
  readonly states = [];
  readonly needs = [];
  readonly outs = [];

  /** Puts a state at the end; the same layout as `handLayer` gives it. */
  add({ cost, tie, grip }: HandState, need: number, out: number): void {
    const at = this.size++;
    if (at === this.cost.length) this.grow();
    const { stops, fingers, struck } = grip;
    this.cost[at] = cost;
    this.tie[at] = tie;
    this.position[at] = grip.position;
    this.down[at] = stops.length > 0 ? 1 : 0;
    const start = at * SLOTS;
    for (let i = 0; i < stops.length; i++) {
      const stop = stops[i];
      if (!stop) continue;
      const slot = start + (fingers[i] ?? 1) - 1;
      this.fingers[slot] = (this.fingers[slot] ?? 0) | (stop.fret << 16) | (1 << stop.index);
    }
    let used = 0;
    for (let slot = 0; slot < SLOTS; slot++) {
      if ((this.fingers[start + slot] ?? 0) !== 0) this.usedSlots[start + used++] = slot;
    }
    this.used[at] = used;
    this.low[at] = struck === 0 ? 99 : 31 - Math.clz32(struck & -struck);
    this.high[at] = struck === 0 ? -99 : 31 - Math.clz32(struck);
    this.need[at] = need;
    this.out[at] = out;
  }

  private grow(): void {
    this.cost = doubled(this.cost, Float64Array);
    this.tie = doubled(this.tie, Float64Array);
    this.position = doubled(this.position, Int32Array);
    this.down = doubled(this.down, Uint8Array);
    this.fingers = doubled(this.fingers, Int32Array);
    this.used = doubled(this.used, Uint8Array);
    this.usedSlots = doubled(this.usedSlots, Uint8Array);
    this.low = doubled(this.low, Int8Array);
    this.high = doubled(this.high, Int8Array);
    this.need = doubled(this.need, Int32Array);
    this.out = doubled(this.out, Int32Array);
  }
}

const FIRST = 2 ** 12;

function doubled<T extends { set(from: T): void; readonly length: number }>(
  old: T,
  type: new (length: number) => T,
): T {
  const grown = new type(old.length * 2);
  grown.set(old);
  return grown;
}
