import { moveCost, moveTable, type HandLayer, type Match, type MoveTable } from './handLayer';
import type { HandGraph } from './handLayers';

/** A way through the graph: the index of a state in each layer. */
export interface HandPath {
  readonly states: readonly number[];
  /** Millionths. */
  readonly cost: number;
}

/** The moves of a passage: what each step from one layer to the next costs. */
export interface Moves {
  readonly graph: HandGraph;
  /** The table of the move into a layer. */
  table(at: number): MoveTable;
  /**
   * The costs of all moves into a layer, `[j · size before + i]`, where the same two layers meet a second time, as in
   * a melody they do; undefined where they do not. Notes let go are not counted.
   */
  matrix(at: number): Float64Array | undefined;
  /** How many moves have been compared. */
  edges: number;
}

/** All matrices of a passage together have no more entries than this: 16 MB. */
const MATRIX_ENTRIES = 2 ** 21;

/** Moves at a tempo. */
export function movesOf(graph: HandGraph, secondsPerQuarter: number): Moves {
  const tables = new Map<number, MoveTable>();
  const matrices = new Map<string, Float64Array | undefined>();
  const byLayer = new Map<number, Float64Array | undefined>();
  let entries = 0;
  const table = (at: number): MoveTable => {
    const quarters = (graph.moments[at]?.onset ?? 0) - (graph.moments[at - 1]?.onset ?? 0);
    // Times that differ by rounding alone share a table.
    const seconds = Math.round(quarters * secondsPerQuarter * 1e6) / 1e6;
    let found = tables.get(seconds);
    if (!found) tables.set(seconds, (found = moveTable(graph.frame, seconds, tables.size)));
    return found;
  };
  const matrix = (at: number): Float64Array | undefined => {
    if (byLayer.has(at)) return byLayer.get(at);
    const [before, layer] = [graph.layers[at - 1], graph.layers[at]];
    if (!before || !layer) return undefined;
    const moves = table(at);
    const key = `${before.id} ${layer.id} ${moves.id}`;
    const seen = matrices.has(key);
    let found = matrices.get(key);
    if (!seen) matrices.set(key, undefined);
    else if (!found && entries + before.size * layer.size <= MATRIX_ENTRIES) {
      entries += before.size * layer.size;
      found = new Float64Array(before.size * layer.size);
      let entry = 0;
      for (let j = 0; j < layer.size; j++) {
        for (let i = 0; i < before.size; i++) found[entry++] = moveCost(before, i, layer, j, moves);
      }
      matrices.set(key, found);
    }
    byLayer.set(at, found);
    return found;
  };
  return { graph, edges: 0, table, matrix };
}

/** The least costs of ways from the start to each state. */
export interface Forward {
  readonly cost: readonly Float64Array[];
  readonly tie: readonly Float64Array[];
  /** The state before; −1 in the first layer and where there is none. */
  readonly from: readonly Int32Array[];
}

/** States of a layer by their `out`, each list from the least value to the greatest. */
export function sortedByOut(layer: HandLayer, cost: Float64Array, tie: Float64Array): Int32Array[] {
  const counts = new Int32Array(layer.outs.length);
  for (let i = 0; i < layer.size; i++) {
    if ((cost[i] ?? Infinity) < Infinity) count(counts, layer.out[i] ?? 0);
  }
  const lists: Int32Array[] = [];
  for (const size of counts) lists.push(new Int32Array(size));
  counts.fill(0);
  for (let i = 0; i < layer.size; i++) {
    const value = cost[i] ?? Infinity;
    if (value === Infinity) continue;
    const out = layer.out[i] ?? 0;
    const list = lists[out] ?? NONE;
    let at = count(counts, out);
    if (list.length > SHORT) {
      list[at] = i;
      continue;
    }
    const tied = tie[i] ?? 0;
    for (; at > 0; at--) {
      const other = list[at - 1] ?? 0;
      const theirs = cost[other] ?? 0;
      if (theirs < value || (theirs === value && (tie[other] ?? 0) <= tied)) break;
      list[at] = other;
    }
    list[at] = i;
  }
  for (const list of lists) {
    if (list.length > SHORT)
      list.sort((a, b) => (cost[a] ?? 0) - (cost[b] ?? 0) || (tie[a] ?? 0) - (tie[b] ?? 0) || a - b);
  }
  return lists;
}

/** Counts one more; what the count was before. */
function count(counts: Int32Array, which: number): number {
  const before = counts[which] ?? 0;
  counts[which] = before + 1;
  return before;
}

/** Up to here it is quicker to put each state in its place as it comes. */
const SHORT = 64;

/**
 * Least sums by dynamic programming. The layer before is sorted, and the comparison stops as soon as nothing better
 * can follow: exact, because no move costs less than 0.
 * @param most the dearest step (move and grip) allowed into each layer; no limit when left out
 */
export function forward(moves: Moves, most?: readonly number[]): Forward {
  const { graph } = moves;
  const costs: Float64Array[] = [];
  const ties: Float64Array[] = [];
  const froms: Int32Array[] = [];
  graph.layers.forEach((layer, at) => {
    const limit = most?.[at] ?? Infinity;
    const before = graph.layers[at - 1];
    const oldCost = costs[at - 1];
    const oldTie = ties[at - 1];
    const cost = new Float64Array(layer.size);
    const tie = new Float64Array(layer.size);
    const from = new Int32Array(layer.size).fill(-1);
    if (!before || !oldCost || !oldTie) {
      for (let j = 0; j < layer.size; j++) {
        const node = layer.cost[j] ?? 0;
        cost[j] = node > limit ? Infinity : node;
        tie[j] = layer.tie[j] ?? 0;
      }
    } else {
      const sorted = sortedByOut(before, oldCost, oldTie);
      const matches = graph.matches(at);
      const table = moves.table(at);
      const matrix = moves.matrix(at);
      let edges = 0;
      for (let j = 0; j < layer.size; j++) {
        const row = j * before.size;
        const room = limit - (layer.cost[j] ?? 0);
        let best = Infinity;
        let bestTie = Infinity;
        let bestFrom = -1;
        for (const { out, cuts } of matches[layer.need[j] ?? 0] ?? []) {
          const extra = cuts * table.cut;
          const list = sorted[out] ?? NONE;
          for (let n = 0; n < list.length; n++) {
            const i = list[n] ?? 0;
            const start = oldCost[i] ?? 0;
            if (start + extra > best) break;
            edges++;
            const move = extra + (matrix ? (matrix[row + i] ?? 0) : moveCost(before, i, layer, j, table));
            if (move > room) continue;
            const whole = start + move;
            if (whole > best) continue;
            const thisTie = oldTie[i] ?? 0;
            if (whole < best || thisTie < bestTie) {
              best = whole;
              bestTie = thisTie;
              bestFrom = i;
            }
          }
        }
        cost[j] = best + (layer.cost[j] ?? 0);
        tie[j] = bestTie + (layer.tie[j] ?? 0);
        from[j] = bestFrom;
      }
      moves.edges += edges;
    }
    costs.push(cost);
    ties.push(tie);
    froms.push(from);
  });
  return { cost: costs, tie: ties, from: froms };
}

const NONE = new Int32Array(0);

/** The best way to the last layer; undefined when no way is left. */
export function bestPathOf({ cost, tie, from }: Forward): HandPath | undefined {
  const last = cost.length - 1;
  if (last < 0) return { states: [], cost: 0 };
  let best = -1;
  cost[last]?.forEach((value, j) => {
    if (value === Infinity) return;
    const old = best < 0 ? Infinity : (cost[last]?.[best] ?? Infinity);
    if (value < old || (value === old && (tie[last]?.[j] ?? 0) < (tie[last]?.[best] ?? 0))) best = j;
  });
  if (best < 0) return undefined;
  return { states: wayTo(from, last, best), cost: cost[last]?.[best] ?? 0 };
}

/** The states from the first layer to one state, by its predecessors. */
export function wayTo(from: readonly Int32Array[], layer: number, state: number): number[] {
  const way: number[] = [];
  let at = state;
  for (let l = layer; l >= 0; l--) {
    way.push(at);
    at = from[l]?.[at] ?? -1;
  }
  return way.reverse();
}

/** The step into each state of a way: move, notes let go and grip, in millionths. */
export function stepsOf(moves: Moves, states: readonly number[]): number[] {
  const { graph } = moves;
  return graph.layers.map((layer, at) => {
    const j = states[at] ?? 0;
    const node = layer.cost[j] ?? 0;
    const before = graph.layers[at - 1];
    if (!before) return node;
    const i = states[at - 1] ?? 0;
    const table = moves.table(at);
    return node + moveCost(before, i, layer, j, table) + cutsOf(graph, at, i, j) * table.cut;
  });
}

/** How many ringing notes are let go between two states that may follow each other. */
export function cutsOf(graph: HandGraph, at: number, i: number, j: number): number {
  const [before, layer] = [graph.layers[at - 1], graph.layers[at]];
  const match = graph.matches(at)[layer?.need[j] ?? 0]?.find(({ out }: Match) => out === before?.out[i]);
  return match?.cuts ?? 0;
}
