import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  costOfPlacement,
  placePassage,
  type PassageNote,
  type Placement,
} from '../../../src/playing/passage';
import { transposable } from '../../../src/playing/transposable';
import { guitar, note, OPENS, targetOf, type Board } from './boards';

const BOARDS: readonly Board[] = [
  guitar(OPENS.standard),
  guitar(OPENS.dadgad),
  guitar(OPENS.openG),
  guitar(OPENS.standard, { fret: 2, strings: undefined }),
  guitar(OPENS.standard, { fret: 2, strings: [5, 4, 3] }),
  { opens: OPENS.ukulele, frets: 15, scaleLength: 345 },
  { opens: OPENS.bass, frets: 20, scaleLength: 864 },
  { opens: OPENS.banjo, frets: 22, scaleLength: 670, firstFrets: [5, 0, 0, 0, 0] },
];

interface Written {
  readonly notes: readonly PassageNote[];
  readonly places: readonly Placement[];
}

/** A passage as a player writes it: strings and frets first, so that it can stand in its own tuning. */
function written(board: Board): fc.Arbitrary<Written> {
  const target = targetOf(board);
  const count = board.opens.length;
  const cell = fc.record({
    string: fc.integer({ min: 1, max: count }),
    fret: fc.integer({ min: 0, max: 3 }),
    shift: fc.boolean(),
    kind: fc.integer({ min: 0, max: 9 }),
    join: fc.boolean(),
  });
  return fc
    .array(fc.uniqueArray(cell, { selector: (one) => one.string, minLength: 1, maxLength: count }), {
      minLength: 1,
      maxLength: 8,
    })
    .map((moments) => {
      const notes: PassageNote[] = [];
      const places: Placement[] = [];
      const lastOn = new Map<number, PassageNote>();
      moments.forEach((cells, onset) => {
        for (const { string, fret: step, shift, kind, join } of cells) {
          // Four frets by the nut, or the same four higher up; a few reach across and cannot be held.
          const fret = step > 0 && shift && onset > 3 ? step + 6 : step;
          const index = count - string;
          const midi = target.fingerboard.pitches(index, fret)?.[0];
          const id = notes.length;
          if (kind === 0 || midi === undefined) {
            notes.push(note(id, undefined, onset, { string }));
            places.push({ id, string, fret: 0 });
            lastOn.delete(string);
            continue;
          }
          const before = lastOn.get(string);
          const next = note(id, midi, onset, { string, joinedTo: join ? before?.id : undefined });
          notes.push(next);
          lastOn.set(string, next);
          const open = target.fingerboard.fretFor(index, midi) === 0;
          places.push({ id, string, fret: open ? 0 : fret });
        }
      });
      return { notes, places };
    });
}

const conversion = fc
  .tuple(fc.integer({ min: 0, max: BOARDS.length - 1 }), fc.integer({ min: 0, max: BOARDS.length - 1 }))
  .chain(([from, to]) => {
    const source = BOARDS[from] ?? guitar(OPENS.standard);
    const goal = BOARDS[to] ?? guitar(OPENS.standard);
    return written(source).map((passage) => ({ source, goal, passage }));
  });

const RUNS = { numRuns: 400, seed: 20261125 };

describe('laws of a conversion', () => {
  it('placements and unplaced together are the notes, each once; each placement sounds its pitch', () => {
    fc.assert(
      fc.property(conversion, ({ goal, passage }) => {
        const target = targetOf(goal);
        const answer = placePassage(passage.notes, target);
        const ids = [...answer.placements, ...answer.unplaced].map((one) => one.id).sort((a, b) => a - b);
        assert.deepEqual(
          ids,
          passage.notes.map((one) => one.id),
        );
        for (const place of answer.placements) {
          const one = passage.notes[place.id];
          if (one?.midi === undefined) continue;
          const pitch = target.fingerboard.pitches(goal.opens.length - place.string, place.fret)?.[0];
          assert.equal(pitch, one.midi);
        }
        for (const one of answer.unplaced) assert.ok(one.detail.endsWith('.') && one.reason.length > 0);
      }),
      RUNS,
    );
  });

  it('no string is shared at one moment, and joined notes share theirs with nothing between', () => {
    fc.assert(
      fc.property(conversion, ({ goal, passage }) => {
        const answer = placePassage(passage.notes, targetOf(goal));
        const placed = new Map(answer.placements.map((place) => [place.id, place.string]));
        const at = new Set<string>();
        for (const one of passage.notes) {
          const string = placed.get(one.id);
          if (string === undefined) continue;
          const key = `${one.onset} ${string}`;
          assert.ok(!at.has(key), `string ${string} twice at ${one.onset}`);
          at.add(key);
        }
        for (const one of passage.notes) {
          const source = one.joinedTo === undefined ? undefined : passage.notes[one.joinedTo];
          const string = placed.get(one.id);
          if (!source || string === undefined) continue;
          assert.equal(placed.get(source.id), string);
          for (let onset = source.onset + 1; onset < one.onset; onset++) {
            assert.ok(!at.has(`${onset} ${string}`), 'a note between joined notes took their string');
          }
        }
      }),
      RUNS,
    );
  });

  it('into the tuning it stands in it is never worse than it was, and nothing is left out', () => {
    let judged = 0;
    fc.assert(
      fc.property(conversion, ({ source, passage }) => {
        const target = targetOf(source);
        const before = costOfPlacement(passage.notes, passage.places, target);
        if (before === undefined) return; // wider than the hand's reach as written
        judged++;
        const answer = placePassage(passage.notes, target);
        assert.deepEqual(answer.unplaced, []);
        assert.ok(answer.cost <= before, `${answer.cost} after, ${before} before`);
      }),
      RUNS,
    );
    assert.ok(judged > 200, `only ${judged} passages could stand as written`);
  });

  it('a string added outside the others never raises what is left out, nor the cost when all is placed', () => {
    fc.assert(
      fc.property(conversion, fc.boolean(), ({ goal, passage }, below) => {
        // With strokes the added string would change which string they keep.
        const notes = passage.notes.filter((one) => one.midi !== undefined);
        const outside = below ? Math.min(...goal.opens) - 5 : Math.max(...goal.opens) + 5;
        const { firstFrets = goal.opens.map(() => 0), ...rest } = goal;
        if (goal.capo?.strings && !below) return; // string numbers of a partial capo would move
        const wider: Board = {
          ...rest,
          opens: below ? [outside, ...goal.opens] : [...goal.opens, outside],
          firstFrets: below ? [0, ...firstFrets] : [...firstFrets, 0],
        };
        const before = placePassage(notes, targetOf(goal));
        const after = placePassage(notes, targetOf(wider));
        assert.ok(after.unplaced.length <= before.unplaced.length);
        if (after.unplaced.length === before.unplaced.length && before.unplaced.length === 0) {
          assert.ok(after.cost <= before.cost, `${after.cost} after, ${before.cost} before`);
        }
      }),
      RUNS,
    );
  });

  it('the order in which the notes are given changes nothing', () => {
    fc.assert(
      fc.property(conversion, ({ goal, passage }) => {
        const answer = placePassage(passage.notes, targetOf(goal));
        assert.deepEqual(placePassage([...passage.notes].reverse(), targetOf(goal)), answer);
      }),
      { ...RUNS, numRuns: 100 },
    );
  });

  it('there and back gives every pitch again when nothing was left out', () => {
    let judged = 0;
    fc.assert(
      fc.property(conversion, ({ source, goal, passage }) => {
        const there = placePassage(passage.notes, targetOf(goal));
        if (there.unplaced.length > 0) return;
        const board = targetOf(goal).fingerboard;
        const sounding = there.placements.map(({ id, string, fret }): PassageNote => {
          const one = passage.notes[id] ?? note(id, undefined, 0);
          const midi =
            one.midi === undefined ? undefined : board.pitches(goal.opens.length - string, fret)?.[0];
          return { ...one, midi, string };
        });
        const back = placePassage(sounding, targetOf(source));
        for (const place of back.placements) {
          const one = passage.notes[place.id];
          if (one?.midi === undefined) continue;
          judged++;
          const index = source.opens.length - place.string;
          assert.equal(targetOf(source).fingerboard.pitches(index, place.fret)?.[0], one.midi);
        }
      }),
      RUNS,
    );
    assert.ok(judged > 200, `only ${judged} notes came back`);
  });
});

describe('the smallest transposition that fits everything', () => {
  it('is offered smallest first, upwards before downwards, and each one fits', () => {
    const target = targetOf(guitar(OPENS.standard));
    const low = [note(0, 38, 0), note(1, 45, 1)];
    const found = transposable(low, target).map((one) => one.halfSteps);
    assert.deepEqual(found, [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    assert.deepEqual(transposable([note(0, 60, 0)], target).slice(0, 3), [
      { halfSteps: 1 },
      { halfSteps: -1 },
      { halfSteps: 2 },
    ]);
  });

  it('agrees with placing the transposed passage', () => {
    fc.assert(
      fc.property(conversion, ({ goal, passage }) => {
        const target = targetOf(goal);
        const found = new Set(transposable(passage.notes, target).map((one) => one.halfSteps));
        for (let by = -12; by <= 12; by += 3) {
          if (by === 0) continue;
          const moved = passage.notes.map((one) => ({
            ...one,
            midi: one.midi === undefined ? undefined : one.midi + by,
          }));
          assert.equal(found.has(by), placePassage(moved, target).unplaced.length === 0, `by ${by}`);
        }
      }),
      { ...RUNS, numRuns: 60 },
    );
  });
});
