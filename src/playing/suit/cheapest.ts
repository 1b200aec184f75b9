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
  /** What decides between equal costs, as in the hand's own search. */
  readonly ties: number[];
  /** The way to the moment before that each goes on from. */
  readonly from: number[];
  /** Stands for the strings that each takes all along. */
  readonly routes: number[];
  /** Whether a way that is equal in everything takes other strings. */
  readonly equalled: boolean[];
}

/** The way found so far into a state. */
interface Into {
  cost: number;
  tie: number;
  from: number;
  route: number;
  equalled: boolean;
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
  /** The ways to each moment of the last search. */
  private readonly ways: Ways[] = [];
  /** Filled anew for each state. */
  private readonly into: Into = { cost: Infinity, tie: Infinity, from: -1, route: 0, equalled: false };

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
    let before = noWays();
    this.ways.length = 0;
    for (let at = 0; at < this.kinds.of.length; at++) {
      before = at === 0 ? this.start(bar) : this.next(at, before, bar);
      if (before.ends.length === 0) return Infinity;
      this.ways.push(before);
      if (over()) yield;
    }
    return before.costs.length > 0 ? leastOf(before.costs) : 0;
  }

  /**
   * The states of the way found last, one a moment; of equal costs the same as in the hand's own search. Undefined
   * where ways on other strings are equal to it in everything: which is taken is for the hand's search to say.
   */
  wayFound(): number[] | undefined {
    const { into } = this;
    const last = this.ways.at(-1);
    if (!last) return [];
    reset(into, Infinity);
    for (let way = 0; way < last.ends.length; way++) better(into, last, way, last.costs[way] ?? Infinity);
    if (into.equalled) return undefined;
    const states: number[] = [];
    let way = into.from;
    for (let at = this.ways.length - 1; at >= 0; at--) {
      states.push(this.ways[at]?.ends[way] ?? -1);
      way = this.ways[at]?.from[way] ?? -1;
    }
    return states.reverse();
  }

  private start(bar: number): Ways {
    const { states } = this;
    const rest = this.bound.rest[0] ?? NONE;
    const { into } = this;
    const ways = noWays();
    reset(into, Infinity);
    for (const { from, to } of this.bound.blocksOf(this.kinds.of[0] ?? 0)) {
      for (let j = from; j < to; j++) {
        const cost = states.cost[j] ?? 0;
        if (cost + (rest[slotOf(states.position[j] ?? 0, states.down[j] ?? 0)] ?? 0) > bar) continue;
        into.cost = into.tie = 0;
        goOn(ways, into, j, from, states);
      }
    }
    return ways;
  }

  private next(at: number, before: Ways, bar: number): Ways {
    const { states } = this;
    const { into } = this;
    const ways = noWays();
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
        reset(into, bar - onward);
        this.find(j, before, follows, table);
        if (into.from >= 0) goOn(ways, into, j, from, states);
      }
    }
    return ways;
  }

  /** The best way and move into a state, if its cost is not above the one given. */
  private find(j: number, before: Ways, follows: readonly Follow[], table: MoveTable): void {
    const { states, into } = this;
    const { ends, costs } = before;
    for (const { ways, extra } of follows) {
      for (const way of ways) {
        const start = (costs[way] ?? 0) + extra;
        if (start > into.cost) break;
        const whole = start + moveCost(states, ends[way] ?? 0, states, j, table);
        if (whole <= into.cost) better(into, before, way, whole);
      }
    }
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

function noWays(): Ways {
  return { ends: [], costs: [], ties: [], from: [], routes: [], equalled: [] };
}

/** Nothing found yet, and nothing above the bar is looked for. */
function reset(into: Into, bar: number): void {
  into.cost = bar;
  into.tie = Infinity;
  into.from = -1;
  into.route = 0;
  into.equalled = false;
}

/** Takes a way if it is better than the one found so far; of two that are equal the first stays. */
function better(into: Into, before: Ways, way: number, cost: number): void {
  const tie = before.ties[way] ?? 0;
  const route = before.routes[way] ?? 0;
  if (cost > into.cost) return;
  if (cost === into.cost && into.from >= 0 && tie >= into.tie) {
    if (tie === into.tie && route !== into.route) into.equalled = true;
    return;
  }
  into.cost = cost;
  into.tie = tie;
  into.from = way;
  into.route = route;
  into.equalled = before.equalled[way] ?? false;
}

/** Puts down the way found into a state. @param block stands for the strings that the state takes */
function goOn(ways: Ways, into: Into, j: number, block: number, states: States): void {
  ways.ends.push(j);
  ways.costs.push(into.cost + (states.cost[j] ?? 0));
  ways.ties.push(into.tie + (states.tie[j] ?? 0));
  ways.from.push(into.from);
  ways.routes.push((Math.imul(into.route, 31) + block) | 0);
  ways.equalled.push(into.equalled);
}

function leastOf(costs: readonly number[]): number {
  let least = Infinity;
  for (const cost of costs) if (cost < least) least = cost;
  return least;
}

const NONE = new Float64Array(0);
