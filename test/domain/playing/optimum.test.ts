import assert from 'node:assert/strict';
import fc from 'fast-check';
import { PLAIN_COSTS } from '../../../src/playing/costs';
import { placePassage, type PassageNote } from '../../../src/playing/passage';
import { note, OPENS, targetOf } from './boards';
import { bruteForce, type OracleBoard, type OracleNote } from './oracle';

/**
 * Source of the expected values: brute force of our own that shares no code with the search (oracle.ts).
 * Random small passages: 1–4 moments, at most 6 notes, joins (also across other notes), muted strokes, stopped notes,
 * capos, a slide bar and short necks, in tunings with six and four strings, re-entrant ones too.
 */
const TUNINGS: readonly { opens: readonly number[]; length: number }[] = [
  { opens: OPENS.standard, length: 648 },
  { opens: OPENS.dadgad, length: 648 },
  { opens: OPENS.openG, length: 648 },
  { opens: OPENS.dropD, length: 648 },
  { opens: OPENS.ukulele, length: 345 },
  { opens: OPENS.bass, length: 864 },
];

interface Case {
  readonly board: OracleBoard;
  readonly notes: readonly OracleNote[];
}

const cases: fc.Arbitrary<Case> = fc
  .record({
    tuning: fc.constantFrom(...TUNINGS),
    frets: fc.integer({ min: 4, max: 9 }),
    capo: fc.constantFrom(0, 0, 0, 1, 2),
    reach: fc.constantFrom(130, 130, 75),
    slide: fc.constantFrom(false, false, false, false, true),
    sizes: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 4 }),
    raw: fc.array(
      fc.record({
        offset: fc.integer({ min: -2, max: 34 }),
        string: fc.integer({ min: 1, max: 7 }),
        stroke: fc.integer({ min: 0, max: 9 }),
        stopped: fc.integer({ min: 0, max: 4 }),
        join: fc.integer({ min: 0, max: 2 }),
        back: fc.integer({ min: 0, max: 5 }),
      }),
      { minLength: 6, maxLength: 6 },
    ),
  })
  .map(({ tuning, frets, capo, reach, slide, sizes, raw }) => {
    const notes: OracleNote[] = [];
    sizes.forEach((size, moment) => {
      const before = notes.filter((one) => one.moment < moment);
      for (let i = 0; i < size && notes.length < 6; i++) {
        const one = raw[notes.length];
        if (!one) return;
        const source = one.join === 0 ? before[one.back % Math.max(1, before.length)] : undefined;
        const joinedPitch =
          source?.midi !== undefined && !notes.some((other) => other.joinedTo === source.id)
            ? source.midi
            : undefined;
        const midi = Math.min(...tuning.opens) + capo + one.offset;
        notes.push({
          id: notes.length,
          midi:
            one.stroke === 0 ? undefined : joinedPitch === undefined ? midi : joinedPitch + (one.offset % 3),
          moment,
          string: one.string,
          joinedTo: one.stroke > 0 && joinedPitch !== undefined ? source?.id : undefined,
          stopped: one.stroke > 0 && one.stopped === 0,
        });
      }
    });
    return { board: { opens: tuning.opens, frets, length: tuning.length, reach, slide, capo }, notes };
  });

function passageOf(notes: readonly OracleNote[]): PassageNote[] {
  return notes.map((one) =>
    note(one.id, one.midi, one.moment, {
      string: one.string,
      joinedTo: one.joinedTo,
      need: one.stopped ? 'stopped' : 'any',
    }),
  );
}

describe('the search finds the best placement there is', () => {
  it('equals brute force on 3,000 random small passages: notes left out, cost and ties', () => {
    let withLeftOut = 0;
    let withJoin = 0;
    fc.assert(
      fc.property(cases, ({ board, notes }) => {
        const expected = bruteForce(notes, board, PLAIN_COSTS);
        const capo = board.capo > 0 ? { fret: board.capo, strings: undefined } : undefined;
        const target = targetOf(
          { opens: board.opens, frets: board.frets, scaleLength: board.length, ...(capo ? { capo } : {}) },
          { reach: board.reach, slide: board.slide },
        );
        const answer = placePassage(passageOf(notes), target);
        assert.equal(answer.unplaced.length, expected.leftOut, 'notes left out');
        assert.ok(
          Math.abs(answer.cost - expected.cost) < 0.02,
          `cost ${answer.cost}, brute force ${expected.cost}`,
        );
        const frets = answer.placements.reduce((sum, place) => sum + place.fret, 0);
        assert.equal(frets, expected.fretSum, 'sum of frets');
        const strangers = answer.placements.filter((place) => place.string !== notes[place.id]?.string);
        assert.equal(strangers.length, expected.strangers, 'strings changed');
        const placed = new Set(answer.placements.map((place) => place.id));
        const lost = lossOf(notes, placed);
        assert.deepEqual(lost, { outer: expected.outerLost, classes: expected.classesLost }, 'voices lost');
        if (expected.leftOut > 0) withLeftOut++;
        if (notes.some((one) => one.joinedTo !== undefined && placed.has(one.id))) withJoin++;
      }),
      { numRuns: 3000, seed: 20261125 },
    );
    assert.ok(
      withLeftOut > 300 && withJoin > 300,
      `${withLeftOut} with notes left out, ${withJoin} with joins`,
    );
  });
});

/** Counts from the answer what the oracle counts in its own way. */
function lossOf(
  notes: readonly OracleNote[],
  placed: ReadonlySet<number>,
): { outer: number; classes: number } {
  let outer = 0;
  let classes = 0;
  for (const moment of new Set(notes.map((one) => one.moment))) {
    const here = notes.filter((one) => one.moment === moment && one.midi !== undefined);
    const pitch = (one: OracleNote): number => one.midi ?? NaN;
    const all = here.map(pitch);
    const kept = here.filter((one) => placed.has(one.id)).map(pitch);
    if (all.length > 0 && !kept.includes(Math.min(...all))) outer++;
    if (all.length > 0 && !kept.includes(Math.max(...all))) outer++;
    const keptClasses = new Set(kept.map((midi) => midi % 12));
    classes += [...new Set(all.map((midi) => midi % 12))].filter((one) => !keptClasses.has(one)).length;
  }
  return { outer, classes };
}
