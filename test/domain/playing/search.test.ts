import assert from 'node:assert/strict';
import fc from 'fast-check';
import { bestPath, layerOf } from '../../../src/playing/search';
import type { State } from '../../../src/playing/grips';

/**
 * Source of the expected values: every path of small random layered graphs, compared one by one. Small whole costs make
 * equal sums common, so that the order of losses, costs and ties is tested as well as the early stop.
 */
const state = fc.record({
  inKey: fc.constantFrom('', '', 'a'),
  outKey: fc.constantFrom('', '', 'a'),
  hand: fc.integer({ min: 0, max: 4 }),
  loss: fc.constantFrom(0, 0, 0, 1, 2),
  cost: fc.integer({ min: 0, max: 6 }),
  tie: fc.integer({ min: 0, max: 4 }),
  places: fc.constant([]),
});

const layered = fc.array(fc.array(state, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 5 });

const move = (from: number, to: number): number => Math.abs(to - from) * 2;

interface Total {
  readonly loss: number;
  readonly cost: number;
  readonly tie: number;
}

function allPaths(layers: readonly (readonly State[])[]): Total[] {
  const totals: Total[] = [];
  const go = (at: number, before: State | undefined, sum: Total): void => {
    const layer = layers[at];
    if (!layer) {
      totals.push(sum);
      return;
    }
    for (const next of layer) {
      if (next.inKey !== (before ? before.outKey : '')) continue;
      const travel = before ? move(before.hand, next.hand) : 0;
      go(at + 1, next, {
        loss: sum.loss + next.loss,
        cost: sum.cost + next.cost + travel,
        tie: sum.tie + next.tie,
      });
    }
  };
  go(0, undefined, { loss: 0, cost: 0, tie: 0 });
  return totals;
}

describe('the best path through a layered graph', () => {
  it('is the least of all paths by loss, then cost, then tie, on 2,000 random graphs', () => {
    let solved = 0;
    fc.assert(
      fc.property(layered, (layers) => {
        const [best] = allPaths(layers).sort((a, b) => a.loss - b.loss || a.cost - b.cost || a.tie - b.tie);
        const path = bestPath(layers.map(layerOf), move);
        assert.equal(path === undefined, best === undefined);
        if (!path || !best) return;
        solved++;
        const tie = path.states.reduce((sum, one) => sum + one.tie, 0);
        assert.deepEqual({ loss: path.loss, cost: path.cost, tie }, best);
        assert.equal(path.states.length, layers.length);
      }),
      { numRuns: 2000, seed: 20261125 },
    );
    assert.ok(solved > 800, `${solved} graphs have a path`);
  });
});
