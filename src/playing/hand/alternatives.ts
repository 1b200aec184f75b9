import { moveCost } from './handLayer';
import { sortedByOut, wayTo, type Forward, type HandPath, type Moves } from './handPath';
import type { HandState } from './handStates';

/** The first and last layer of each bar, in the order of time. */
export type BarRange = readonly [first: number, last: number];

/**
 * The least-cost answer that plays some one bar in another position than all answers before it: at each moment of the
 * bar at which a finger is down in both, the index stands at another fret, and at least one note of the bar has another
 * place. Undefined when there is none.
 * @param ways the answers before, as states by layer
 * @param most as for `forward`
 */
export function nextAlternative(
  moves: Moves,
  ahead: Forward,
  bars: readonly BarRange[],
  ways: readonly (readonly number[])[],
  most?: readonly number[],
): HandPath | undefined {
  const onward = backward(moves, most);
  let best: { cost: number; bar: BarRange; end: number; from: Int32Array[]; set: number } | undefined;
  for (const bar of bars) {
    const found = throughBar(moves, ahead, onward.cost, bar, ways, most);
    if (found && (!best || found.cost < best.cost)) best = { ...found, bar };
  }
  if (!best) return undefined;
  const [first, last] = best.bar;
  const sets = 1 << ways.length;
  const middle: number[] = [];
  let at = best.end * sets + best.set;
  for (let layer = last; layer >= first; layer--) {
    middle.unshift(Math.floor(at / sets));
    at = best.from[layer - first]?.[at] ?? -1;
  }
  const before = first > 0 ? wayTo(ahead.from, first - 1, at) : [];
  const after: number[] = [];
  let state = best.end;
  for (let layer = last; layer + 1 < moves.graph.layers.length; layer++) {
    state = onward.to[layer]?.[state] ?? -1;
    after.push(state);
  }
  return { states: [...before, ...middle, ...after], cost: best.cost };
}

/** The least cost of the way from each state to the end, its own grip not counted. */
function backward(moves: Moves, most?: readonly number[]): { cost: Float64Array[]; to: Int32Array[] } {
  const { layers } = moves.graph;
  const cost = layers.map(({ size }) => new Float64Array(size).fill(Infinity));
  const to = layers.map(({ size }) => new Int32Array(size).fill(-1));
  cost.at(-1)?.fill(0);
  for (let at = layers.length - 1; at > 0; at--) {
    const [before, layer] = [layers[at - 1], layers[at]];
    const [costHere, costBefore, toBefore] = [cost[at], cost[at - 1], to[at - 1]];
    if (!before || !layer || !costHere || !costBefore || !toBefore) continue;
    const table = moves.table(at);
    const matrix = moves.matrix(at);
    const limit = most?.[at] ?? Infinity;
    const lists = listsByOut(before.size, before.out, before.outs.length);
    const matches = moves.graph.matches(at);
    for (let j = 0; j < layer.size; j++) {
      const node = layer.cost[j] ?? 0;
      const rest = node + (costHere[j] ?? Infinity);
      if (rest === Infinity) continue;
      for (const { out, cuts } of matches[layer.need[j] ?? 0] ?? []) {
        for (const i of lists[out] ?? []) {
          const old = costBefore[i] ?? Infinity;
          if (rest >= old) continue;
          moves.edges++;
          const base = matrix ? (matrix[j * before.size + i] ?? 0) : moveCost(before, i, layer, j, table);
          const move = cuts * table.cut + base;
          if (move + node > limit || move + rest >= old) continue;
          costBefore[i] = move + rest;
          toBefore[i] = j;
        }
      }
    }
  }
  return { cost, to };
}

/** The least way through a bar in another position; `set` marks the answers that it differs from in some note. */
function throughBar(
  moves: Moves,
  ahead: Forward,
  onward: readonly Float64Array[],
  [first, last]: BarRange,
  ways: readonly (readonly number[])[],
  most?: readonly number[],
): { cost: number; end: number; from: Int32Array[]; set: number } | undefined {
  const { layers } = moves.graph;
  const sets = 1 << ways.length;
  const all = sets - 1;
  const froms: Int32Array[] = [];
  let costs = new Float64Array(0);
  for (let at = first; at <= last; at++) {
    const layer = layers[at];
    if (!layer) return undefined;
    const before = layers[at - 1];
    const limit = most?.[at] ?? Infinity;
    const here = new Float64Array(layer.size * sets).fill(Infinity);
    const from = new Int32Array(layer.size * sets).fill(-1);
    const others = ways.map((way) => layer.states[way[at] ?? -1]);
    const entry = ahead.cost[at - 1];
    const table = moves.table(at);
    const matrix = at > 0 ? moves.matrix(at) : undefined;
    const matches = moves.graph.matches(at);
    const sorted = before && entry && at === first ? sortedByOut(before, entry, entry) : undefined;
    const lists = before && at > first ? listsByOut(before.size, before.out, before.outs.length) : [];
    layer.states.forEach((state, j) => {
      if (others.some((other) => other && samePosition(other, state))) return;
      let marks = 0;
      others.forEach((other, n) => {
        if (other && !samePlaces(other, state)) marks |= 1 << n;
      });
      const node = layer.cost[j] ?? 0;
      if (!before) {
        if (node <= limit) here[j * sets + marks] = node;
        return;
      }
      for (const { out, cuts } of matches[layer.need[j] ?? 0] ?? []) {
        for (const i of sorted?.[out] ?? lists[out] ?? []) {
          const base = matrix ? (matrix[j * before.size + i] ?? 0) : moveCost(before, i, layer, j, table);
          const move = cuts * table.cut + node + base;
          if (move > limit) continue;
          for (let set = 0; set < (sorted ? 1 : sets); set++) {
            const start = sorted ? (entry?.[i] ?? Infinity) : (costs[i * sets + set] ?? Infinity);
            const target = j * sets + (set | marks);
            if (start + move >= (here[target] ?? Infinity)) continue;
            here[target] = start + move;
            from[target] = sorted ? i : i * sets + set;
          }
        }
      }
    });
    froms.push(from);
    costs = here;
  }
  let best: { cost: number; end: number; from: Int32Array[]; set: number } | undefined;
  for (let end = 0; end * sets < costs.length; end++) {
    const whole = (costs[end * sets + all] ?? Infinity) + (onward[last]?.[end] ?? Infinity);
    if (whole < (best?.cost ?? Infinity)) best = { cost: whole, end, from: froms, set: all };
  }
  return best;
}

function listsByOut(size: number, out: Int32Array, count: number): number[][] {
  const lists: number[][] = Array.from({ length: count }, () => []);
  for (let i = 0; i < size; i++) lists[out[i] ?? 0]?.push(i);
  return lists;
}

function samePosition(a: HandState, b: HandState): boolean {
  return a.grip.stops.length > 0 && b.grip.stops.length > 0 && a.grip.position === b.grip.position;
}

function samePlaces(a: HandState, b: HandState): boolean {
  return a.own.every((place, i) => {
    const other = b.own[i];
    return place?.index === other?.index && place?.fret === other?.fret && place?.touched === other?.touched;
  });
}
