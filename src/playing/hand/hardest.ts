import { moveCost } from './handLayer';
import { sortedByOut, type Moves } from './handPath';

/**
 * The dearest step that is allowed into each layer, so that within each group the hardest step is as easy as it can be:
 * the first of the two passes. A single pass over pairs of (hardest, sum) would be wrong.
 *
 * A step is a move with the grip it leads to. A step at the least cost that any two states there have is unavoidable
 * and set aside: it hardens no bound, and stays allowed. Groups are runs of layers in the order of time; each is made
 * easiest under what the groups before it allow.
 * @param groups the group of each layer
 */
export function hardestAllowed(moves: Moves, groups: readonly number[]): number[] {
  const { graph } = moves;
  const least = leastSteps(moves);
  const allowed: number[] = [];
  let value = new Float64Array(0);
  let start = 0;
  graph.layers.forEach((layer, at) => {
    const before = graph.layers[at - 1];
    const floor = least[at] ?? 0;
    const next = new Float64Array(layer.size);
    if (!before) {
      for (let j = 0; j < layer.size; j++) next[j] = over(layer.cost[j] ?? 0, floor);
    } else {
      // A new group starts from every state that the group before may end in.
      if (groups[at] !== groups[at - 1]) {
        const bound = closeGroup(at);
        value = value.map((one) => (one <= bound ? 0 : Infinity));
      }
      const sorted = sortedByOut(before, value, value);
      const matches = graph.matches(at);
      const table = moves.table(at);
      const matrix = moves.matrix(at);
      for (let j = 0; j < layer.size; j++) {
        const node = layer.cost[j] ?? 0;
        let best = Infinity;
        for (const { out, cuts } of matches[layer.need[j] ?? 0] ?? []) {
          const list = sorted[out] ?? new Int32Array(0);
          const extra = node + cuts * table.cut;
          const lower = over(extra, floor);
          for (let n = 0; n < list.length; n++) {
            const i = list[n] ?? 0;
            const so = value[i] ?? 0;
            if (so >= best || lower >= best) break;
            moves.edges++;
            const move = matrix ? (matrix[j * before.size + i] ?? 0) : moveCost(before, i, layer, j, table);
            const step = over(extra + move, floor);
            const hardest = step > so ? step : so;
            if (hardest < best) best = hardest;
          }
        }
        next[j] = best;
      }
    }
    value = next;
  });
  closeGroup(graph.layers.length);
  return allowed;

  function closeGroup(end: number): number {
    let bound = Infinity;
    for (const one of value) if (one < bound) bound = one;
    for (let at = start; at < end; at++) allowed.push(Math.max(bound, least[at] ?? 0));
    start = end;
    return bound;
  }
}

/** A step above what is unavoidable; 0 for one that is not. */
function over(step: number, floor: number): number {
  return step > floor ? step : 0;
}

/** The least step into each layer, whatever came before: what no fingering avoids there. */
function leastSteps(moves: Moves): number[] {
  const { graph } = moves;
  const memo = new Map<string, number>();
  return graph.layers.map((layer, at) => {
    const before = graph.layers[at - 1];
    if (!before) return Math.min(Infinity, ...layer.cost);
    const table = moves.table(at);
    const key = `${before.id} ${layer.id} ${table.id}`;
    const old = memo.get(key);
    if (old !== undefined) return old;
    const byOut: number[][] = before.outs.map(() => []);
    for (let i = 0; i < before.size; i++) byOut[before.out[i] ?? 0]?.push(i);
    const matches = graph.matches(at);
    let least = Infinity;
    for (let j = 0; j < layer.size; j++) {
      const node = layer.cost[j] ?? 0;
      if (node >= least) continue;
      for (const { out, cuts } of matches[layer.need[j] ?? 0] ?? []) {
        const extra = node + cuts * table.cut;
        if (extra >= least) continue;
        for (const i of byOut[out] ?? []) {
          moves.edges++;
          const step = extra + moveCost(before, i, layer, j, table);
          if (step < least) least = step;
          if (extra >= least) break;
        }
      }
    }
    memo.set(key, least);
    return least;
  });
}
