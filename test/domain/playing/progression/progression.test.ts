import assert from 'node:assert/strict';
import fc from 'fast-check';
import { handOptions } from '../../../../src/playing/hand/options';
import { easiestProgression } from '../../../../src/playing/progression/easiestProgression';
import { OPENS, targetOf } from '../boards';
import { ProgressionOracle } from './progressionOracle';

// Source of the expected values: brute force of our own that shares no code with the search (progressionOracle.ts),
// written from the table of constants in shared/facts/hand-model.md.

const FRETS = 9;

/** Shapes of 4 strings, three stopped at most within four frets, so that brute force has an end. */
const shape = fc
  .record({
    position: fc.integer({ min: 1, max: 5 }),
    strings: fc.array(fc.constantFrom(null, 0, -1, 1, 2, 3), { minLength: 4, maxLength: 4 }),
    extra: fc.constantFrom(0, 0, 0.5, 3),
  })
  .map(({ position, strings, extra }) => {
    let stopped = 0;
    const frets = strings.map((one) => {
      if (one === null || one === 0) return one;
      return ++stopped > 3 ? null : Math.max(1, position + one);
    });
    return { frets, extra };
  });

const progression = fc.array(
  fc.record({
    shapes: fc.array(shape, { minLength: 1, maxLength: 3 }),
    seconds: fc.constantFrom(0.05, 0.3, 0.7, 2),
  }),
  { minLength: 2, maxLength: 3 },
);

describe('the easiest progression', () => {
  it('equals brute force on 600 short progressions', function () {
    this.timeout(120_000);
    const oracle = new ProgressionOracle({ strings: 4, frets: FRETS, length: 648 });
    const target = targetOf({ opens: OPENS.bass, frets: FRETS, scaleLength: 648 });
    let compared = 0;
    let traded = 0;
    fc.assert(
      fc.property(progression, (chords) => {
        const expected = oracle.least(chords);
        const answer = easiestProgression(chords, target, handOptions());
        if (expected === undefined) {
          assert.ok(answer.chosen.includes(undefined));
          return;
        }
        compared++;
        assert.ok(Math.abs(answer.cost - expected) < 1e-4, `${answer.cost}, brute force ${expected}`);
        const sum = answer.chosen.reduce((all, one) => all + (one?.cost ?? 0), 0);
        assert.ok(Math.abs(sum - expected) < 1e-4, 'the steps make the sum');
        const alone = chords.map(({ shapes, seconds }) =>
          easiestProgression([{ shapes, seconds }], target, handOptions()),
        );
        if (alone.some(({ chosen }, i) => chosen[0]?.shape !== answer.chosen[i]?.shape)) traded++;
      }),
      { numRuns: 600, seed: 20261127 },
    );
    assert.ok(
      compared > 300 && traded > 10,
      `${compared} compared, ${traded} where a move decides the shape`,
    );
  });

  it('takes the shape that is known for a chord rather than spare one finger a move', () => {
    // C before G in standard: x32010 (check values T7), though the index of x32050 could stay where it is.
    const target = targetOf({ opens: OPENS.standard, frets: 22, scaleLength: 648 });
    const c = [
      { frets: [null, 3, 2, 0, 1, 0], extra: 0.8 },
      { frets: [null, 3, 2, 0, 5, 0], extra: 0.8 },
    ];
    const g = [{ frets: [3, 2, 0, 0, 0, 3], extra: 0 }];
    const { chosen } = easiestProgression(
      [
        { shapes: c, seconds: 0 },
        { shapes: g, seconds: 0.6 },
      ],
      target,
      handOptions(),
    );
    assert.equal(chosen[0]?.shape, 0);
  });

  it('goes on behind a chord that has no shape', () => {
    const target = targetOf({ opens: OPENS.standard, frets: 22, scaleLength: 648 });
    const c = [{ frets: [null, 3, 2, 0, 1, 0], extra: 0 }];
    const { chosen } = easiestProgression(
      [
        { shapes: c, seconds: 0 },
        { shapes: [], seconds: 1 },
        { shapes: [{ frets: [1, 10, null, null, null, null], extra: 0 }], seconds: 1 },
        { shapes: c, seconds: 1 },
      ],
      target,
      handOptions(),
    );
    assert.deepEqual(
      chosen.map((one) => one?.shape),
      [0, undefined, undefined, 0],
    );
    assert.equal(chosen[3]?.cost, (chosen[0]?.cost ?? 0) + 0, 'the hand stays where it was');
  });

  it('keeps a shape where the same chord comes again, and takes another where the hand is elsewhere', () => {
    const target = targetOf({ opens: OPENS.standard, frets: 22, scaleLength: 648 });
    // A minor open, and as a barre at fret 5; D minor at fret 5 stands beside the barre.
    const am = [
      { frets: [null, 0, 2, 2, 1, 0], extra: 0 },
      { frets: [5, 7, 7, 5, 5, 5], extra: 0 },
    ];
    const barre = [{ frets: [null, 5, 7, 7, 6, 5], extra: 0 }];
    const run = (...chords: (typeof am)[]): (number | undefined)[] =>
      easiestProgression(
        chords.map((shapes) => ({ shapes, seconds: 0.05 })),
        target,
        handOptions(),
      ).chosen.map((one) => one?.shape);
    assert.deepEqual(run(am, am, am), [0, 0, 0]);
    // No time, and a barre that the hand holds already: open A minor would cost two shifts.
    assert.deepEqual(run(barre, am, barre), [0, 1, 0]);
  });
});
