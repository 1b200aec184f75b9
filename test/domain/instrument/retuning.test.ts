import assert from 'node:assert/strict';
import fc from 'fast-check';
import { carriesOver } from '../../../src/instrument/retuning/carriesOver';
import { retuningOrder, type RetuningStep } from '../../../src/instrument/retuning/retuningOrder';
import { stringChanges } from '../../../src/instrument/retuning/stringChanges';
import { createFingerboard } from '../../../src/instrument/sounding';
import type { Tuning, TuningString } from '../../../src/instrument/tuning';
import { randomPair } from './randomTuning';
import { tuning } from './read';

const turns = (from: string, to: string, on = 'guitar'): Readonly<Record<number, number | string>> =>
  Object.fromEntries(
    stringChanges(tuning(from, on), tuning(to, on)).flatMap(({ number, kind, halfSteps }) =>
      kind === 'stays' ? [] : [[number, kind === 'up' || kind === 'down' ? halfSteps : kind]],
    ),
  );

const square = (string: TuningString): number =>
  string.pitches.reduce((sum, { midi }) => sum + 2 ** (midi / 6), 0);

const stepsOf = (from: string, to: string, on = 'guitar'): readonly RetuningStep[] =>
  retuningOrder(stringChanges(tuning(from, on), tuning(to, on)), square, 22).steps;

describe('What is turned (facts of the trade: common practice, no source)', () => {
  it('open E from standard raises strings 5 and 4 a whole step and string 3 a half step', () =>
    assert.deepEqual(turns('standard', 'open E'), { 5: 2, 4: 2, 3: 1 }));

  it('drop D lowers string 6 a whole step', () => assert.deepEqual(turns('standard', 'drop D'), { 6: -2 }));

  it('DADGAD lowers strings 6, 2 and 1 a whole step', () =>
    assert.deepEqual(turns('standard', 'DADGAD'), { 6: -2, 2: -2, 1: -2 }));

  it('five-string open G leaves string 6 off and lowers 5 and 1 a whole step', () =>
    assert.deepEqual(turns('standard', 'five-string open G'), { 6: 'off', 5: -2, 1: -2 }));

  it('back from there string 6 is put on again', () =>
    assert.deepEqual(turns('five-string open G', 'standard'), { 6: 'add', 5: 2, 1: 2 }));

  it('high strung takes other strings for 6 to 3, an octave up', () =>
    assert.deepEqual(turns('standard', 'high strung'), {
      6: 'exchange',
      5: 'exchange',
      4: 'exchange',
      3: 'exchange',
    }));

  it('nothing from a tuning into itself', () => assert.deepEqual(turns('open G', 'open G'), {}));
});

describe('The order of retuning', () => {
  it('lowers before it raises: CGDGCD from open E', () => {
    const kinds = stepsOf('open E', 'CGDGCD').map(({ change }) => change.kind);
    assert.deepEqual(kinds, [...kinds].sort());
    assert.ok(kinds.includes('down') && kinds.includes('up'));
  });

  it('each string is heard against one that is in tune already', () => {
    const told = stepsOf('standard', 'DADGAD').map(({ change, check }) => [
      change.number,
      check?.by,
      check?.fret,
      check?.apart,
    ]);
    // common practice, no source: 6 an octave below open 4, 2 an octave above open 5, 1 an octave above open 4
    assert.deepEqual(told, [
      [6, 4, 0, -12],
      [2, 5, 0, 12],
      [1, 4, 0, 12],
    ]);
  });

  it('where nothing stays the first string needs a tuner, the others do not', () => {
    const steps = stepsOf('standard', 'half step down');
    assert.equal(steps.length, 6);
    assert.deepEqual(
      steps.map(({ check }) => check !== undefined),
      [false, true, true, true, true, true],
    );
  });
});

/** One string's pull by its number, with a weight of its own: T = weight · f². */
const weighing =
  (weights: readonly number[]) =>
  (string: TuningString, number: number): number =>
    (weights[number - 1] ?? 1) * square(string);

describe('laws of retuning', () => {
  const weights = fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { minLength: 8, maxLength: 8 });

  it('at no step the set pulls more than at the larger of start and end, nor a string more than at its own', () => {
    fc.assert(
      fc.property(randomPair, weights, ([from, to], weight) => {
        const pullOf = weighing(weight);
        const changes = stringChanges(from, to);
        const { steps } = retuningOrder(changes, pullOf, 22);
        // Worked out afresh: the strings that are on, one by one.
        const ends = (of: Tuning): Map<number, number> =>
          new Map(
            of.strings.map((string, at) => [of.strings.length - at, pullOf(string, of.strings.length - at)]),
          );
        const [start, end] = [ends(from), ends(to)];
        // A string put on in another's place is made for its pitch and pulls as the one before.
        for (const { kind, number } of changes)
          if (kind === 'exchange') end.set(number, start.get(number) ?? 0);
        const total = (pulls: ReadonlyMap<number, number>): number =>
          [...pulls.values()].reduce((sum, one) => sum + one, 0);
        const most = Math.max(total(start), total(end)) * (1 + 1e-9);
        const now = new Map(start);
        for (const { change, pull } of steps) {
          now.set(change.number, end.get(change.number) ?? 0);
          assert.ok(total(now) <= most, 'the set');
          assert.ok(Math.abs(total(now) - pull) < 1e-6 * most, 'the pull that is told');
          const own = Math.max(start.get(change.number) ?? 0, end.get(change.number) ?? 0);
          assert.ok((now.get(change.number) ?? 0) <= own, 'a string');
        }
      }),
    );
  });

  it('each string that changes is one step, and the last of them leaves the other tuning', () => {
    fc.assert(
      fc.property(randomPair, ([from, to]) => {
        const changes = stringChanges(from, to);
        const { steps } = retuningOrder(changes, square, 22);
        assert.deepEqual(
          steps.map(({ change }) => change.number).sort(),
          changes
            .filter(({ kind }) => kind !== 'stays')
            .map(({ number }) => number)
            .sort(),
        );
      }),
    );
  });

  it('every check is what is heard on strings that are in tune by then', () => {
    fc.assert(
      fc.property(randomPair, ([from, to]) => {
        const board = createFingerboard(to, undefined, 22);
        const changes = stringChanges(from, to);
        const tuned = new Set(changes.filter(({ kind }) => kind === 'stays').map(({ number }) => number));
        for (const { change, check } of retuningOrder(changes, square, 22).steps) {
          if (check) {
            assert.ok(tuned.has(check.by), `string ${check.by}`);
            const heard = (number: number, fret: number): number =>
              board.pitches(to.strings.length - number, fret)?.[0] ?? NaN;
            const [own, other] = check.stops === 'string' ? [check.fret, 0] : [0, check.fret];
            assert.equal(heard(check.string, own) - heard(check.by, other), check.apart);
          }
          if (change.to) tuned.add(change.number);
        }
      }),
    );
  });
});

describe('What carries over', () => {
  it('to open E from standard: 6, 2 and 1 stay; 5 has the names of 2, 4 those of 6 and 1; only 3 is new', () => {
    // issue text; common practice, no source
    const from = tuning('standard');
    const over = carriesOver(stringChanges(from, tuning('open E')), from);
    assert.deepEqual(over.unchanged, [6, 2, 1]);
    assert.deepEqual(over.renamed, [
      { number: 5, as: [2] },
      { number: 4, as: [6, 1] },
    ]);
    assert.deepEqual(over.fresh, [3]);
    assert.deepEqual(over.together, [{ strings: [5, 4], halfSteps: 2 }]);
  });

  it('laws: every string that is left stands once; a name that is taken over is a name the tuning had', () => {
    fc.assert(
      fc.property(randomPair, ([from, to]) => {
        const { unchanged, renamed, fresh } = carriesOver(stringChanges(from, to), from);
        const all = [...unchanged, ...fresh, ...renamed.map(({ number }) => number)].sort();
        assert.deepEqual(
          all,
          to.strings.map((_, at) => at + 1),
        );
        const classOf = (of: Tuning, number: number): number =>
          (of.strings[of.strings.length - number]?.pitches[0].midi ?? NaN) % 12;
        for (const { number, as } of renamed)
          for (const other of as) assert.equal(classOf(to, number), classOf(from, other));
        for (const number of fresh)
          assert.ok(!from.strings.some((_, at) => classOf(from, at + 1) === classOf(to, number)));
      }),
    );
  });
});
