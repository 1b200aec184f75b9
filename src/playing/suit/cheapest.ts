import { ANYTHING } from '../hand/handStates';
import { moveCost, type HandLayer } from '../hand/handLayer';
import { slotOf, type BlockStates, type Kinds } from './kinds';
import type { Bound, Step } from './bound';

/** States of a moment that are reached within the bar, cheapest first. */
interface Reached {
  readonly cost: number;
  readonly layer: HandLayer;
  readonly state: number;
  readonly out: number;
}

/** Which of the states reached may be followed by a need, and at what price. */
interface Way {
  readonly group: readonly Reached[];
  readonly extra: number;
}

/**
 * The least cost of a passage in the tuning that a bound has gathered and swept, in millionths. The same sums as the
 * hand's own search, by dynamic programming over the same states and moves; states from where the bound shows the whole
 * to come out above the bar are left aside.
 * @param bar above it the answer is only said to be above: Infinity
 */
export class Cheapest {
  constructor(
    private readonly kinds: Kinds,
    private readonly steps: readonly Step[],
    private readonly bound: Bound,
  ) {}

  /** Hands back between moments, whenever `over` says so. */
  *of(bar: number, over: () => boolean): Generator<void, number> {
    let before: Reached[] = [];
    for (let at = 0; at < this.kinds.of.length; at++) {
      before = at === 0 ? this.start(bar) : this.next(at, before, bar);
      if (before.length === 0) return Infinity;
      if (over()) yield;
    }
    return before[0]?.cost ?? 0;
  }

  private statesAt(at: number): BlockStates[] {
    return this.bound.statesOf(this.kinds.of[at] ?? 0);
  }

  private start(bar: number): Reached[] {
    const rest = this.bound.rest[0] ?? NONE;
    const reached: Reached[] = [];
    for (const { layer, out } of this.statesAt(0)) {
      for (let j = 0; j < layer.size; j++) {
        const cost = layer.cost[j] ?? 0;
        if (cost + (rest[slotOf(layer.position[j] ?? 0, layer.down[j] ?? 0)] ?? 0) > bar) continue;
        reached.push({ cost, layer, state: j, out: out[j] ?? 0 });
      }
    }
    return reached.sort(byCost);
  }

  private next(at: number, before: readonly Reached[], bar: number): Reached[] {
    const step = this.steps[at];
    const rest = this.bound.rest[at] ?? NONE;
    const reached: Reached[] = [];
    if (!step) return reached;
    const { table } = step;
    const groups = new Map<number, Reached[]>();
    for (const one of before) {
      const group = groups.get(one.out);
      if (group) group.push(one);
      else groups.set(one.out, [one]);
    }
    const waysTo = new Map<number, readonly Way[]>();
    const least = before[0]?.cost ?? 0;
    for (const { layer, need, out } of this.statesAt(at)) {
      for (let j = 0; j < layer.size; j++) {
        const node = layer.cost[j] ?? 0;
        const onward = node + (rest[slotOf(layer.position[j] ?? 0, layer.down[j] ?? 0)] ?? 0);
        if (least + onward > bar) continue;
        const asked = need[j] ?? 0;
        let ways = waysTo.get(asked);
        if (!ways) waysTo.set(asked, (ways = this.waysTo(at, asked, groups, table.cut)));
        let best = bar - onward;
        let found = false;
        for (const { group, extra } of ways) {
          for (const one of group) {
            const start = one.cost + extra;
            if (start > best) break;
            const whole = start + moveCost(one.layer, one.state, layer, j, table);
            if (whole > best) continue;
            best = whole;
            found = true;
          }
        }
        if (found) reached.push({ cost: best + node, layer, state: j, out: out[j] ?? 0 });
      }
    }
    return reached.sort(byCost);
  }

  private waysTo(
    at: number,
    asked: number,
    groups: ReadonlyMap<number, readonly Reached[]>,
    cut: number,
  ): readonly Way[] {
    const kind = this.kinds.kinds[this.kinds.of[at] ?? 0];
    const outs = this.kinds.kinds[this.kinds.of[at - 1] ?? 0]?.outs ?? [];
    const need = kind?.needs[asked] ?? [];
    const joined = kind?.joined ?? 0;
    const ways: Way[] = [];
    for (const [out, group] of groups) {
      const cuts = cutsOf(need, outs[out] ?? [], joined);
      if (cuts >= 0) ways.push({ group, extra: cuts * cut });
    }
    return ways;
  }
}

/** Notes let go between two states, −1 where one may not follow the other; the same rule as the hand's `matchesOf`. */
export function cutsOf(need: readonly number[], out: readonly number[], joined: number): number {
  let cuts = 0;
  for (let i = 0; i < need.length; i++) {
    if (need[i] === ANYTHING) cuts += i >= joined && (out[i] ?? 0) > 0 ? 1 : 0;
    else if (need[i] !== out[i]) return -1;
  }
  return cuts;
}

function byCost(a: Reached, b: Reached): number {
  return a.cost - b.cost;
}

const NONE = new Float64Array(0);
