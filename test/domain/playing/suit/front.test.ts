import assert from 'node:assert/strict';
import { Front } from '../../../../src/playing/suit/front';
import { candidateOf, compareCandidates } from '../../../../src/playing/suit/order';
import { countOf, familyOf, spaceOf } from '../../../../src/playing/suit/space';

const member = (steps: readonly number[], halfSteps = 0) => ({
  steps,
  halfSteps,
  changed: steps.filter((by) => by !== 0).length,
});

describe('the best tunings so far', () => {
  it('stand by cost, then steps of retuning, then strings changed, then transposition', () => {
    const inOrder = [
      candidateOf([0, -2], 0, 10),
      candidateOf([0, 1], 0, 11),
      candidateOf([2, 0], 0, 11),
      candidateOf([-1, 1], 0, 11),
      candidateOf([1, -1], 0, 11),
      candidateOf([1, -1], -1, 11),
      candidateOf([1, -1], 1, 11),
      candidateOf([1, 2], 0, 11),
    ];
    assert.deepEqual([...inOrder].reverse().sort(compareCandidates), inOrder);
  });

  it('keep the fewest steps of equal costs, whichever came first', () => {
    const costs = [
      [1, 1],
      [0, -1],
      [2, 0],
      [0, 0],
    ] as const;
    for (const order of [costs, [...costs].reverse()]) {
      const front = new Front(2);
      for (const steps of order) front.take([member(steps)], 5);
      assert.deepEqual(
        front.best.map(({ steps }) => steps),
        [
          [0, 0],
          [0, -1],
        ],
      );
      assert.deepEqual(
        front.byStringsChanged.map(({ steps }) => steps),
        [
          [0, 0],
          [0, -1],
          [1, 1],
        ],
      );
    }
  });

  it('let nothing pass that could still be best of all or best with as many strings changed', () => {
    const front = new Front(1);
    assert.equal(front.bar([member([0, 0])]), Infinity);
    front.take([member([1, 0])], 5);
    assert.equal(front.bar([member([0, 0])]), Infinity);
    front.take([member([0, 0])], 9);
    assert.ok(Math.abs(front.bar([member([0, 0])]) - 9) < 1e-3);
    assert.ok(Math.abs(front.bar([member([0, 1])]) - 5) < 1e-3);
  });
});

describe('retunings with transpositions', () => {
  it('fall into families that are fingered alike, and every pair is in exactly one', () => {
    const steps = [
      [0, -1, 1],
      [0, -1],
      [0, 1, -1, 2],
    ];
    const keys = [0, 1, -1, 2];
    const space = spaceOf(steps, keys);
    assert.equal(space.size, 3 * 2 * 4 * 4);
    const seen = new Set<string>();
    let counted = 0;
    for (const a of space.offers[0] ?? []) {
      for (const b of space.offers[1] ?? []) {
        for (const c of space.offers[2] ?? []) {
          const both = a.keys & b.keys & c.keys;
          counted += countOf(both);
          for (const { steps: own, halfSteps } of familyOf(
            [a.relative, b.relative, c.relative],
            both,
            space,
          )) {
            own.forEach((by, index) => assert.ok(steps[index]?.includes(by)));
            seen.add(`${own.join(' ')} @ ${halfSteps}`);
          }
        }
      }
    }
    assert.equal(counted, space.size);
    assert.equal(seen.size, space.size);
  });
});
