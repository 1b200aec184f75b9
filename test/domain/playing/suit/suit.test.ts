import assert from 'node:assert/strict';
import { findInstrument, GUITAR } from '../../../../src/instrument/instruments';
import type { Tuning } from '../../../../src/instrument/tuning';
import { findTuning, tuningsFor } from '../../../../src/instrument/tunings';
import { handOptions, playPassage, withValues } from '../../../../src/playing/hand/handSearch';
import type { PassageNote } from '../../../../src/playing/passage';
import { targetFor } from '../../../../src/playing/suit/describe';
import { Judge } from '../../../../src/playing/suit/judge';
import { candidateOf, compareCandidates } from '../../../../src/playing/suit/order';
import {
  stringBears,
  suit,
  type SuitAnswer,
  type SuitRequest,
  type SuitStep,
} from '../../../../src/playing/suit/suit';
import { moved } from '../../../../src/playing/transposable';
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
    // Where the bound has least to spare: a shift under an open string, and a bass that must be let go once.
    const shifted = melody([64, 79, 64, 81]);
    const letGo = [
      note(0, 43, 0, { end: 5 }),
      ...[76, 78, 76, 79].map((midi, at) => note(at + 1, midi, at + 1)),
    ];
    for (const notes of [littlePassage(3), littlePassage(8), littlePassage(14), shifted, letGo]) {
      // Open strings are dear with the hand up the neck, so that it must move under them.
      const constants = withValues(notes === shifted ? { lineOpenHigh: 5 } : {});
      const request = requestOf(notes, { options: handOptions({ constants }) });
      const judge = new Judge(request, steps);
      for (const choice of everyChoice(steps)) {
        const bound = drain(judge.lowerBound(choice, () => false));
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
    const { named } = answerTo({ ...request, within: 0 });
    for (const name of ['DADGAD', 'open G', 'all fifths', 'high strung']) {
      const target = targetFor(request, tuningOf(name));
      const costs = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6].map((by) => {
        const [own] = playPassage(
          notes.map((one) => moved(one, by)),
          target,
          request.options,
        );
        return { by, cost: own?.unplaced.length === 0 ? own.cost : Infinity };
      });
      const least = Math.min(...costs.map(({ cost }) => cost));
      const ranked = named.find(({ tuning }) => tuning.name === name);
      assert.equal(ranked?.cost, least, name);
      assert.equal(ranked.halfSteps, costs.find(({ cost }) => cost === least)?.by, name);
    }
  }).timeout(60_000);

  it('is the best for joins over held notes, harmonics, strokes, a capo and other instruments too', () => {
    const joins = [
      note(0, 55, 0, { end: 2, string: 3 }),
      note(1, 64, 0, { end: 0.5, string: 1 }),
      note(2, 60, 0.5, { end: 1, string: 2 }),
      note(3, 57, 1, { end: 2, joinedTo: 0, string: 3 }),
      note(4, 62, 1, { end: 2, string: 1 }),
      note(5, 62, 2, { need: 'natural-harmonic', string: 4 }),
      note(6, undefined, 2, { string: 5 }),
      note(7, 76, 2.5, { need: 'artificial-harmonic', string: 1 }),
    ];
    const twins = [...chord([59, 59, 64]), note(3, 66, 1), note(4, 50, 1)];
    const base = requestOf(joins);
    const cases: readonly SuitRequest[] = [
      base,
      requestOf(twins),
      { ...base, target: { ...base.target, capo: { fret: 2, strings: undefined } }, notes: littlePassage(9) },
      { ...base, target: { ...base.target, capo: { fret: 3, strings: [5, 4, 3] } }, notes: littlePassage(1) },
      { ...base, target: { ...base.target, slide: true }, notes: melody([62, 64, 67, 66, 62]) },
      { ...base, options: handOptions({ openStrings: false, thumb: true }), notes: littlePassage(4) },
      { ...base, options: handOptions({ caps: { barres: false, fingers: 3 } }), notes: littlePassage(10) },
      {
        ...base,
        options: handOptions({ secondsPerQuarter: 0.2, objective: 'hardest' }),
        notes: littlePassage(8),
      },
    ];
    const offers = [
      [0, -1, 1],
      [0, 1],
      [0, -1],
      [0, 1],
      [0, -1, 1],
      [0, -1],
    ];
    const limits = (string: number, by: number): boolean => offers[string]?.includes(by) === true;
    const played = cases.map((one) => {
      const request = { ...one, limits };
      const known = everyTuning(request, offers, [0]);
      assertSame(request, known);
      return known.filter(({ cost }) => cost < Infinity).length;
    });
    assert.ok(
      played.every((count) => count > 0),
      `none of the passages is out of reach: ${played.join(' ')}`,
    );
  }).timeout(60_000);

  it('is the best on strings of courses and on a short string', () => {
    for (const name of ['12-string guitar', 'banjo', 'ukulele']) {
      const instrument = findInstrument(name);
      assert.ok(instrument);
      const start = tuningOf('half step down', instrument);
      const target = { frets: instrument.frets, capo: undefined, scaleLength: instrument.scaleLength };
      const request = requestOf(melody([66, 68, 71, 63]), {
        start,
        instrument,
        target: { ...target, reach: 130, slide: false },
        limits: (string, by) => by === 0 || (string < 4 && by === -1),
        keep: 3,
      });
      const offers = start.strings.map((_, string) => (string < 4 ? [0, -1] : [0]));
      const known = everyTuning(request, offers, [0]);
      const costs = known.map(({ cost }) => cost).sort((a, b) => a - b);
      assert.deepEqual(
        answerTo(request).best.map(({ cost }) => cost),
        costs.slice(0, 3),
        name,
      );
    }
  }).timeout(20_000);

  it('goes to the fewest steps of retuning where costs are equal', () => {
    // One note on the open first string: whatever the other strings are tuned to, it costs the same.
    const answer = answerTo(requestOf(melody([64]), { keep: 4 }));
    assert.equal(new Set(answer.best.map(({ cost }) => cost)).size, 1);
    assert.deepEqual(
      answer.best.map(({ why }) => why.stepsOfRetuning),
      [0, 1, 1, 1],
    );
    assert.equal(answer.best[0]?.tuning, STANDARD);
    assert.deepEqual(
      answer.byStringsChanged.map(({ changed, suited }) => [changed, suited.why.stepsOfRetuning]),
      [0, 1, 2, 3, 4, 5, 6].map((changed) => [changed, changed]),
    );
  });

  it('says so when no tuning on offer plays eight bars', () => {
    // The last bar asks for five notes from F2 to A2 at once: no tuning has five strings as low as that.
    const notes = sixteenBars().filter(({ onset }) => onset < 28);
    [41, 42, 43, 44, 45].forEach((midi, i) => notes.push(note(900 + i, midi, 28, { end: 32 })));
    const answer = answerTo(requestOf(notes));
    assert.equal(answer.here, undefined);
    assert.deepEqual(answer.best, []);
    assert.deepEqual(answer.byStringsChanged, []);
    assert.equal(answer.unplayable, 729);
    assert.equal(answer.total, 729);
    assert.equal(answer.ruledOut + answer.evaluated, 0);
    assert.ok(answer.named.every(({ cost, answer: played }) => cost === Infinity && played === undefined));
  }).timeout(20_000);

  it('ranks every named tuning of the instrument by the same cost, each told with its reasons', () => {
    const request = requestOf(littlePassage(4), { within: 0, limits: stringBears(STANDARD, GUITAR, 648) });
    const { named, best, here } = answerTo(request);
    assert.deepEqual(
      named.map(({ tuning }) => tuning.name).sort(),
      tuningsFor(GUITAR)
        .map(({ name }) => name)
        .sort(),
    );
    const costs = named.map(({ cost }) => cost);
    assert.deepEqual(
      costs,
      [...costs].sort((a, b) => a - b),
    );
    for (const [at, { tuning, cost, answer, why }] of named.entries()) {
      const [own] = playPassage(request.notes, targetFor(request, tuning), request.options);
      assert.equal(cost, own?.unplaced.length === 0 ? own.cost : Infinity, tuning.name);
      assert.equal(answer !== undefined, at < request.keep && cost < Infinity);
      if (answer) assert.ok(why.hardest.length > 0 && why.openStrings === answer.measures.openStrings);
    }
    const whyOf = (name: string) => named.find(({ tuning }) => tuning.name === name)?.why;
    const dadgad = whyOf('DADGAD');
    assert.deepEqual(
      [dadgad?.stepsOfRetuning, dadgad?.stringsChanged, dadgad?.raisesBy, dadgad?.borne],
      [6, 3, 0, true],
    );
    // E2 B2 E3 G#3 B3 E4: strings 5 and 4 up two, 3 up one. All fifths: B4 is seven above, G3 two, D4 … A3.
    assert.deepEqual([whyOf('open E')?.raisesBy, whyOf('open E')?.borne], [2, true]);
    assert.deepEqual([whyOf('all fifths')?.raisesBy, whyOf('all fifths')?.borne], [7, false]);
    assert.deepEqual(
      best.map(({ tuning, cost }) => [tuning, cost]),
      [[STANDARD, here?.cost]],
    );
  }).timeout(20_000);

  it('counts what rings: open notes free to sound on, and the bass on open strings', () => {
    const notes = [
      note(0, 40, 0, { end: 2, string: 6 }),
      note(1, 64, 0, { end: 1, string: 1 }),
      note(2, 65, 1, { end: 2, string: 1 }),
      note(3, 45, 2, { end: 3, string: 5 }),
    ];
    const why = answerTo(requestOf(notes, { within: 0 })).here?.why;
    // E2 and A2 are open and free afterwards; E4 is open, but its string is taken by F4.
    assert.deepEqual([why?.openStrings, why?.ringing, why?.bassOnOpen], [3, 2, 2]);
  });

  it('tells how far it is, and stops for good when it is asked no further', () => {
    const request = requestOf(sixteenBars(), { within: 2 });
    const search = suit(request);
    const steps: SuitStep[] = [];
    while (steps.length < 60) {
      const step = search.next();
      assert.ok(step.done !== true, 'a long search hands back long before it is done');
      steps.push(step.value);
    }
    assert.ok(steps.some(({ phase }) => phase === 'named'));
    for (const [at, { done, total, phase }] of steps.entries()) {
      assert.ok(done >= 0 && done <= total);
      const before = steps[at - 1];
      if (before?.phase === phase) assert.ok(done >= before.done);
    }
    const before = JSON.stringify(request);
    assert.deepEqual(search.return({} as SuitAnswer).done, true);
    assert.equal(search.next().done, true);
    assert.equal(JSON.stringify(request), before);
    // Nothing of it is left: the next search gives the same as one that was never disturbed.
    const little = requestOf(littlePassage(3));
    const half = suit(little);
    half.next();
    const [first, second] = [answerTo(little), answerTo(little)];
    assert.deepEqual(
      first.best.map(({ cost }) => cost),
      second.best.map(({ cost }) => cost),
    );
  }).timeout(30_000);

  it('has an answer for no notes at all', () => {
    const answer = answerTo(requestOf([]));
    assert.equal(answer.here?.cost, 0);
    assert.equal(answer.best[0]?.tuning, STANDARD);
    assert.equal(answer.unplayable, 0);
  });
});

function drain<T>(work: Generator<void, T>): T {
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}
