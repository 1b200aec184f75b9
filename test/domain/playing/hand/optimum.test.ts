import assert from 'node:assert/strict';
import fc from 'fast-check';
import { handOptions, playPassage } from '../../../../src/playing/hand/handSearch';
import { targetOf } from '../boards';
import { Oracle } from './handOracle';
import { cases, passageOf, type Case } from './randomPassages';

// Source of the expected values: brute force of our own that shares no code with the search (handOracle.ts), written
// from the table of constants in shared/facts/hand-model.md.

function solve({ hand, notes }: Case, objective: 'total' | 'hardest', groups?: readonly number[]) {
  const target = targetOf(
    { opens: hand.opens, frets: hand.frets, scaleLength: hand.length },
    { slide: hand.slide },
  );
  const { thumb, openStrings, secondsPerQuarter } = hand;
  const groupOf = (id: number): number => groups?.[notes[id]?.onset ?? 0] ?? 0;
  const [answer] = playPassage(
    passageOf(notes),
    target,
    handOptions({ objective, thumb, openStrings, secondsPerQuarter, groupOf }),
  );
  assert.ok(answer);
  return answer;
}

describe('the hand model finds the least cost there is', () => {
  it('equals brute force on 1,200 small passages: notes left out, then the sum', function () {
    this.timeout(60_000);
    let held = 0;
    let leftOut = 0;
    fc.assert(
      fc.property(cases, (one) => {
        const expected = new Oracle(one.notes, one.hand).least();
        const answer = solve(one, 'total');
        assert.equal(answer.unplaced.length, expected.loss[0], 'notes left out');
        assert.ok(
          Math.abs(answer.cost - expected.cost) < 1e-4,
          `${answer.cost}, brute force ${expected.cost}`,
        );
        if (one.notes.some((n) => n.end > n.onset + 1)) held++;
        if (expected.loss[0] > 0) leftOut++;
      }),
      { numRuns: 1200, seed: 20261125 },
    );
    assert.ok(held > 600 && leftOut > 150, `${held} with notes that ring on, ${leftOut} with notes left out`);
  });

  it('equals brute force on 1,000 small passages: the easiest hardest step, then the sum, by sections', function () {
    this.timeout(60_000);
    let easier = 0;
    fc.assert(
      fc.property(cases, fc.constantFrom([0, 0, 0, 0], [0, 0, 1, 1]), (one, groups) => {
        const oracle = new Oracle(one.notes, one.hand);
        const plain = solve(one, 'total');
        fc.pre(plain.unplaced.length === 0 && one.notes.every((n) => n.joinedTo === undefined));
        const expected = oracle.easiest(oracle.onsets.map((_, m) => groups[m] ?? 0));
        const answer = solve(one, 'hardest', groups);
        assert.ok(
          Math.abs(answer.cost - expected.cost) < 1e-4,
          `${answer.cost}, brute force ${expected.cost}`,
        );
        if (answer.cost > plain.cost + 1e-6) easier++;
      }),
      { numRuns: 1000, seed: 20261126 },
    );
    assert.ok(easier > 50, `only ${easier} passages where the objective matters`);
  });
});
