import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { PassageNote, Placement } from '../../../../src/playing/passage';
import { handOptions, measurePlacement, playPassage } from '../../../../src/playing/hand/handSearch';
import { guitar, note, OPENS, targetOf, type Board } from '../boards';
import { cases, passageOf } from './randomPassages';

const BOARDS: readonly Board[] = [
  guitar(OPENS.standard),
  guitar(OPENS.dadgad),
  guitar(OPENS.openG, { fret: 3, strings: undefined }),
  guitar(OPENS.standard, { fret: 2, strings: [5, 4, 3] }),
  { opens: OPENS.ukulele, frets: 15, scaleLength: 345 },
  { opens: OPENS.banjo, frets: 22, scaleLength: 670, firstFrets: [5, 0, 0, 0, 0] },
];

/** A passage as a player writes it: strings and frets first. */
const written = fc
  .record({
    board: fc.constantFrom(...BOARDS),
    cells: fc.array(
      fc.array(
        fc.record({
          string: fc.integer({ min: 1, max: 6 }),
          fret: fc.integer({ min: 0, max: 5 }),
          ring: fc.integer({ min: 0, max: 2 }),
          kind: fc.integer({ min: 0, max: 12 }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ board, cells }) => {
    const target = targetOf(board);
    const count = board.opens.length;
    const notes: PassageNote[] = [];
    const places: Placement[] = [];
    const last = new Map<number, PassageNote>();
    cells.forEach((moment, onset) => {
      const taken = new Set<number>();
      for (const cell of moment) {
        const string = ((cell.string - 1) % count) + 1;
        const midi = target.fingerboard.pitches(count - string, cell.fret)?.[0];
        if (taken.has(string) || midi === undefined) continue;
        taken.add(string);
        const stroke = cell.kind === 0;
        const before = last.get(string);
        const next = note(notes.length, stroke ? undefined : midi, onset, {
          string,
          end: onset + 1 + cell.ring,
          joinedTo: cell.kind === 1 && before?.midi !== undefined ? before.id : undefined,
        });
        notes.push(next);
        last.set(string, next);
        places.push({ id: next.id, string, fret: stroke ? 0 : cell.fret });
      }
    });
    return { board, target, notes, places };
  });

describe('laws of the hand model', function () {
  this.timeout(120_000);

  it('a passage in its own tuning never gets worse, and is never found worse than a player’s way', () => {
    let measured = 0;
    fc.assert(
      fc.property(written, ({ target, notes, places }) => {
        const own = measurePlacement(notes, places, target, handOptions());
        const [best] = playPassage(notes, target, handOptions());
        assert.ok(best);
        if (!own) return;
        measured++;
        assert.equal(best.unplaced.length, 0);
        assert.ok(best.cost <= own.cost, `${best.cost}, the player’s ${own.cost}`);
        // What the search found costs the same when it is measured as a player’s.
        const again = measurePlacement(notes, best.placements, target, handOptions());
        assert.equal(again?.cost, best.cost);
      }),
      { numRuns: 300, seed: 20261125 },
    );
    assert.ok(measured > 150, `${measured} of 300 could be held`);
  });

  it('notes in = placed + left out, whatever the caps, and placed notes keep pitch, joins and their own strings', () => {
    const caps = fc.record(
      {
        span: fc.integer({ min: 20, max: 130 }),
        fingers: fc.integer({ min: 0, max: 4 }),
        barres: fc.boolean(),
        highestFret: fc.integer({ min: 0, max: 12 }),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(
        written,
        caps,
        fc.constantFrom('total' as const, 'hardest' as const),
        ({ board, target, notes }, limits, objective) => {
          const answers = playPassage(
            notes,
            target,
            handOptions({ caps: limits, objective, alternatives: 3 }),
          );
          assert.ok(answers.length >= 1 && answers.length <= 3);
          for (const { placements, unplaced, fingers } of answers) {
            const ids = [...placements, ...unplaced].map(({ id }) => id).sort((a, b) => a - b);
            assert.deepEqual(
              ids,
              notes.map(({ id }) => id),
            );
            for (const place of placements) {
              const one = notes[place.id];
              assert.ok(one);
              const index = board.opens.length - place.string;
              if (one.midi !== undefined)
                assert.equal(target.fingerboard.pitches(index, place.fret)?.[0], one.midi);
              const source = placements.find(({ id }) => id === one.joinedTo);
              if (one.joinedTo !== undefined) assert.equal(source?.string, place.string);
              assert.ok(place.fret <= (limits.highestFret ?? Infinity));
              assert.ok(fingers.has(place.id));
            }
            for (const onset of new Set(notes.map((one) => one.onset))) {
              const here = placements.filter(({ id }) => notes[id]?.onset === onset);
              assert.equal(new Set(here.map(({ string }) => string)).size, here.length);
            }
          }
        },
      ),
      { numRuns: 300, seed: 20261125 },
    );
  });

  it('a string added outside the others never raises the least cost', () => {
    fc.assert(
      fc.property(cases, fc.boolean(), fc.integer({ min: 1, max: 12 }), ({ hand, notes }, below, by) => {
        // The thumb belongs to the outermost string: with another one outside it has another to stop.
        const before = hand.opens;
        const opens = below ? [Math.min(...before) - by, ...before] : [...before, Math.max(...before) + by];
        const cost = (strings: readonly number[]) => {
          const target = targetOf(
            { opens: strings, frets: hand.frets, scaleLength: hand.length },
            { slide: hand.slide },
          );
          const [answer] = playPassage(
            passageOf(notes),
            target,
            handOptions({ openStrings: hand.openStrings }),
          );
          assert.ok(answer);
          return answer;
        };
        const [few, more] = [cost(before), cost(opens)];
        assert.ok(more.unplaced.length <= few.unplaced.length);
        // A note that can be placed only now is a note more to play.
        if (few.unplaced.length === 0) assert.ok(more.cost <= few.cost, `${more.cost}, before ${few.cost}`);
      }),
      { numRuns: 400, seed: 20261125 },
    );
  });

  it('the order in which notes are given does not matter, nor does asking twice', () => {
    fc.assert(
      fc.property(written, ({ target, notes }) => {
        const [one] = playPassage(notes, target, handOptions());
        const [other] = playPassage([...notes].reverse(), target, handOptions());
        assert.deepEqual(one?.placements, other?.placements);
        assert.deepEqual(one?.fingers, other?.fingers);
      }),
      { numRuns: 150, seed: 20261125 },
    );
  });

  it('the easiest hardest step is never harder than that of the least sum, the sum never less', () => {
    fc.assert(
      fc.property(written, ({ target, notes }) => {
        const [sum] = playPassage(notes, target, handOptions());
        const [easy] = playPassage(notes, target, handOptions({ objective: 'hardest' }));
        assert.ok(sum && easy);
        assert.ok(easy.cost >= sum.cost);
        assert.ok((easy.measures.hardest?.cost ?? 0) <= (sum.measures.hardest?.cost ?? 0) + 1e-9);
      }),
      { numRuns: 200, seed: 20261125 },
    );
  });
});
