import { better, type State } from './grips';

/** The states of one moment, grouped by what the next moment must know. */
export interface Layer {
  readonly states: readonly State[];
  readonly byOut: ReadonlyMap<string, readonly number[]>;
}

export interface Path {
  readonly states: readonly State[];
  readonly loss: number;
  /** Thousandths of a millimetre. */
  readonly cost: number;
  readonly nodeCount: number;
  readonly edgeCount: number;
}

export function layerOf(states: readonly State[]): Layer {
  const byOut = new Map<string, number[]>();
  states.forEach((state, index) => {
    const group = byOut.get(state.outKey);
    if (group) group.push(index);
    else byOut.set(state.outKey, [index]);
  });
  return { states, byOut };
}

/**
 * The best path through the layers, one state each, by dynamic programming: least loss, then least cost, then least tie.
 * All three are sums, so the answer is exact. The layer before is sorted and the comparison stops as soon as nothing
 * better can follow, which is exact because no move has a cost below 0.
 * @param move cost of the hand's way from one position to another, thousandths of a millimetre, ≥ 0
 * @returns undefined when no path exists
 */
export function bestPath(
  layers: readonly Layer[],
  move: (from: number, to: number) => number,
): Path | undefined {
  let nodeCount = 0;
  let edgeCount = 0;
  let before: Reached[] = [
    { loss: 0, cost: 0, tie: 0, hand: 0, outKey: '', state: undefined, from: undefined },
  ];
  let groups: ReadonlyMap<string, Reached[]> = new Map([['', before]]);
  for (const [at, layer] of layers.entries()) {
    nodeCount += layer.states.length;
    const after: Reached[] = [];
    const next = new Map<string, Reached[]>();
    for (const state of layer.states) {
      let from: Reached | undefined;
      let cost = Infinity;
      let loss = Infinity;
      let tie = Infinity;
      for (const candidate of groups.get(state.inKey) ?? []) {
        if (candidate.loss > loss || (candidate.loss === loss && candidate.cost > cost)) break;
        edgeCount++;
        const whole = candidate.cost + (at === 0 ? 0 : move(candidate.hand, state.hand));
        if (candidate.loss < loss || whole < cost || (whole === cost && candidate.tie < tie)) {
          from = candidate;
          ({ loss, tie } = candidate);
          cost = whole;
        }
      }
      if (!from) continue;
      const reached = {
        loss: loss + state.loss,
        cost: cost + state.cost,
        tie: tie + state.tie,
        hand: state.hand,
        outKey: state.outKey,
        state,
        from,
      };
      after.push(reached);
      const group = next.get(state.outKey);
      if (group) group.push(reached);
      else next.set(state.outKey, [reached]);
    }
    for (const group of next.values()) group.sort(byValue);
    before = after;
    groups = next;
  }
  let best: Reached | undefined;
  for (const reached of before) {
    if (!best || better(reached.loss, reached.cost, reached.tie, best)) best = reached;
  }
  if (!best) return undefined;
  const states: State[] = [];
  for (let step: Reached | undefined = best; step?.state; step = step.from) states.push(step.state);
  return { states: states.reverse(), loss: best.loss, cost: best.cost, nodeCount, edgeCount };
}

/** A state with the best way to it. */
interface Reached {
  readonly loss: number;
  readonly cost: number;
  readonly tie: number;
  readonly hand: number;
  readonly outKey: string;
  readonly state: State | undefined;
  readonly from: Reached | undefined;
}

function byValue(a: Reached, b: Reached): number {
  return a.loss - b.loss || a.cost - b.cost || a.tie - b.tie;
}
