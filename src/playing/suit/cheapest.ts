import { ANYTHING } from '../hand/handStates';
import { moveCost, type MoveTable } from '../hand/handLayer';
import { slotOf, type Kinds } from './kinds';
import type { Bound, Step } from './bound';
import type { States } from './states';

/** Ways to the states of one moment, in parallel lists. */
interface Ways {
  /** The state that each ends in. */
  readonly ends: number[];
  readonly costs: number[];
}

/** Ways whose last states tell the same: their numbers, the cheapest first. */
interface Group {
  readonly out: number;
  readonly ways: number[];
}

/** Ways that a state may follow, and at what price. */
interface Follow {
  readonly ways: readonly number[];
  readonly extra: number;
}

/**
 * The least cost of a passage in the tuning that a bound has gathered and swept, in millionths. The same sums as the
 * hand's own search, by dynamic programming over the same states and moves; states from where the bound shows the whole
 * to come out above the bar are left aside.
 */
export class Cheapest {
  constructor(
    private readonly kinds: Kinds,
    private readonly steps: readonly Step[],
    private readonly bound: Bound,
    private readonly states: States,
  ) {}

  /**
   * Hands back between moments, whenever `over` says so.
   * @param bar above it the answer is only said to be above: Infinity
   */
  *of(bar: number, over: () => boolean): Generator<void, number> {
    let before: Ways = { ends: [], costs: [] };
    for (let at = 0; at < this.kinds.of.length; at++) {
      before = at === 0 ? this.start(bar) : this.next(at, before, bar);
      if (before.ends.length === 0) return Infinity;
      if (over()) yield;
    }
    return before.costs.length > 0 ? leastOf(before.costs) : 0;
  }

  private start(bar: number): Ways {
    const { states } = this;
    const rest = this.bound.rest[0] ?? NONE;
    const ways: Ways = { ends: [], costs: [] };
    for (const { from, to } of this.bound.blocksOf(this.kinds.of[0] ?? 0)) {
      for (let j = from; j < to; j++) {
        const cost = states.cost[j] ?? 0;
        if (cost + (rest[slotOf(states.position[j] ?? 0, states.down[j] ?? 0)] ?? 0) > bar) continue;
        ways.ends.push(j);
        ways.costs.push(cost);
      }
    }
    return ways;
  }

  private next(at: number, before: Ways, bar: number): Ways {
    const { states } = this;
    const ways: Ways = { ends: [], costs: [] };
    const table = this.steps[at]?.table;
    if (!table) return ways;
    const rest = this.bound.rest[at] ?? NONE;
    const groups = this.groupsOf(before);
    const followed = new Map<number, readonly Follow[]>();
    const least = leastOf(before.costs);
    for (const { from, to } of this.bound.blocksOf(this.kinds.of[at] ?? 0)) {
      for (let j = from; j < to; j++) {
        const node = states.cost[j] ?? 0;
        const onward = node + (rest[slotOf(states.position[j] ?? 0, states.down[j] ?? 0)] ?? 0);
        if (least + onward > bar) continue;
        const asked = states.need[j] ?? 0;
        let follows = followed.get(asked);
        if (!follows) followed.set(asked, (follows = this.followsOf(at, asked, groups, table.cut)));
        const cost = this.leastInto(j, before, follows, table, bar - onward);
        if (cost === Infinity) continue;
        ways.ends.push(j);
        ways.costs.push(cost + node);
      }
    }
    return ways;
  }

  /** The least cost of a way and the move from it into a state; Infinity when it is above the bar. */
  private leastInto(
    j: number,
    { ends, costs }: Ways,
    follows: readonly Follow[],
    table: MoveTable,
    bar: number,
  ): number {
    const { states } = this;
    let best = bar;
    let found = false;
    for (const { ways, extra } of follows) {
      for (const way of ways) {
        const start = (costs[way] ?? 0) + extra;
        if (start > best) break;
        const whole = start + moveCost(states, ends[way] ?? 0, states, j, table);
        if (whole > best) continue;
        best = whole;
        found = true;
      }
    }
    return found ? best : Infinity;
  }

  private groupsOf({ ends, costs }: Ways): readonly Group[] {
    const { states } = this;
    const groups = new Map<number, Group>();
    ends.forEach((end, way) => {
      const out = states.out[end] ?? 0;
      const group = groups.get(out);
      if (group) group.ways.push(way);
      else groups.set(out, { out, ways: [way] });
    });
    const all = [...groups.values()];
    for (const { ways } of all) ways.sort((a, b) => (costs[a] ?? 0) - (costs[b] ?? 0));
    return all;
  }

  private followsOf(at: number, asked: number, groups: readonly Group[], cut: number): readonly Follow[] {
    const kind = this.kinds.kinds[this.kinds.of[at] ?? 0];
    const outs = this.kinds.kinds[this.kinds.of[at - 1] ?? 0]?.outs ?? [];
    const need = kind?.needs[asked] ?? [];
    const joined = kind?.joined ?? 0;
    const follows: Follow[] = [];
    for (const { out, ways } of groups) {
      const cuts = cutsOf(need, outs[out] ?? [], joined);
      if (cuts >= 0) follows.push({ ways, extra: cuts * cut });
    }
    return follows;
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

function leastOf(costs: readonly number[]): number {
  let least = Infinity;
  for (const cost of costs) if (cost < least) least = cost;
  return least;
}

const NONE = new Float64Array(0);
