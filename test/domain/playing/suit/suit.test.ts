import assert from 'node:assert/strict';
import { GUITAR, findInstrument } from '../../../../src/instrument/instruments';
import { formatTuningNotes } from '../../../../src/instrument/tuningFormat';
import type { Tuning } from '../../../../src/instrument/tuning';
import { findTuning, tuningsFor } from '../../../../src/instrument/tunings';
import { handOptions, playPassage } from '../../../../src/playing/hand/handSearch';
import type { PassageNote } from '../../../../src/playing/passage';
import { targetFor } from '../../../../src/playing/suit/describe';
import { Judge } from '../../../../src/playing/suit/judge';
import { candidateOf, compareCandidates } from '../../../../src/playing/suit/order';
import { suit, type SuitAnswer, type SuitRequest, type SuitStep } from '../../../../src/playing/suit/suit';
import { chord, melody, note } from '../boards';
import { everyChoice, everyTuning, type Known } from './everyTuning';
import { littlePassage, sixteenBars } from './passages';

const STANDARD = tuningOf('standard');
const EVERY_STRING = (): boolean => true;

function tuningOf(name: string, instrument = GUITAR): Tuning {
  const found = findTuning(name, instrument);
  assert.ok(found, name);
  return { strings: found.strings, name, text: name };
}

function requestOf(notes: readonly PassageNote[], more: Partial<SuitRequest> = {}): SuitRequest {
  return {
    notes,
    start: STANDARD,
    instrument: GUITAR,
    target: { frets: 22, capo: undefined, scaleLength: 648, reach: 130, slide: false },
    options: handOptions(),
    within: 1,
    anyKey: false,
    keep: 10,
    limits: EVERY_STRING,
    ...more,
  };
}

function answerTo(request: SuitRequest): SuitAnswer {
  const search = suit(request);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}

function stepsWithin(by: number, strings = 6): number[][] {
  const all = Array.from({ length: 2 * by + 1 }, (_, index) => index - by);
  return Array.from({ length: strings }, () => all);
}

/** Every tuning, each by the hand's own search, against the answer with the bound. */
function assertSame(request: SuitRequest, known: readonly Known[]): void {
  const answer = answerTo(request);
  const playable = known
    .filter(({ cost }) => cost < Infinity)
    .map(({ steps, halfSteps, cost }) => candidateOf(steps, halfSteps, cost))
    .sort(compareCandidates);
  const show = (notes: string, halfSteps: number, cost: number): string => `${cost} ${notes} ${halfSteps}`;
  const notesOf = (steps: readonly number[]): string =>
    STANDARD.strings.map(({ pitches }, index) => pitches[0].midi + (steps[index] ?? 0)).join(' ');
  const soundOf = (tuning: Tuning): string => tuning.strings.map(({ pitches }) => pitches[0].midi).join(' ');
  const first = new Map<string, string>();
  for (const { steps, halfSteps, cost } of playable) {
    // Tuned alike and transposed alike: one way to play, its nearest member first.
    const family = steps.map((by) => by - halfSteps).join(' ');
    if (!first.has(family)) first.set(family, show(notesOf(steps), halfSteps, cost));
  }
  assert.deepEqual(
    answer.best.map(({ tuning, halfSteps, cost }) => show(soundOf(tuning), halfSteps, cost)),
    [...first.values()].slice(0, request.keep),
  );
  const byChanged = [0, 1, 2, 3, 4, 5, 6].flatMap((changed) => {
    const best = playable.find(({ stringsChanged }) => stringsChanged === changed);
    return best ? [`${changed}: ${show(notesOf(best.steps), best.halfSteps, best.cost)}`] : [];
  });
  assert.deepEqual(
    answer.byStringsChanged.map(
      ({ changed, suited }) => `${changed}: ${show(soundOf(suited.tuning), suited.halfSteps, suited.cost)}`,
    ),
    byChanged,
  );
  assert.equal(answer.total, known.length);
  assert.equal(answer.unplayable, known.length - playable.length);
  assert.equal(answer.evaluated + answer.ruledOut, playable.length);
}

describe('the tuning that suits a passage', () => {
  // The oracle is the hand's own search, tuning by tuning; it shares the costs, which have an oracle of their own.
  for (let seed = 1; seed <= 20; seed++) {
    it(`is the best of all 729 within a half step, passage ${seed}`, () => {
      const request = requestOf(littlePassage(seed));
      assertSame(request, everyTuning(request, stepsWithin(1), [0]));
    }).timeout(60_000);
  }

  it('is proved by a bound that is never above the cost, and tells the same tunings unplayable', () => {
    const steps = stepsWithin(1);
    let compared = 0;
    let near = 0;
    for (const seed of [3, 8, 14]) {
      const request = requestOf(littlePassage(seed));
      const judge = new Judge(request, steps);
      for (const choice of everyChoice(steps)) {
        const tuning = choice.map((by) => by + 1);
        const bound = drain(judge.lowerBound(tuning, () => false));
        const plays = bound < Infinity && judge.plays();
        const cost = plays ? drain(judge.least(Infinity, () => false)) : Infinity;
        assert.ok(bound <= cost, `${bound} is above ${cost}: ${choice.join(' ')}`);
        if (cost === Infinity) continue;
        compared++;
        near += bound / cost;
      }
    }
    assert.ok(compared > 500, `${compared} compared`);
    assert.ok(near / compared > 0.5, `the bound is worth something: ${near / compared} of the cost`);
  }).timeout(60_000);

  it('is the best in any key as well', () => {
    const start = tuningOf('standard');
    const notes = littlePassage(5).slice(0, 3);
    const request = requestOf(notes, {
      start,
      anyKey: true,
      limits: (string, by) => string >= 4 || by <= 0,
      within: 1,
    });
    const steps = [
      [0, -1],
      [0, -1],
      [0, -1],
      [0, -1],
      [0, -1, 1],
      [0, -1, 1],
    ];
    assertSame(request, everyTuning(request, steps, [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6]));
  }).timeout(60_000);
});

function drain<T>(work: Generator<void, T>): T {
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}
