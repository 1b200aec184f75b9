import fc from 'fast-check';
import type { Tuning } from '../../../src/instrument/tuning';
import { spellMidi } from '../../../src/music/spelling';

/** Notes from a bass's lowest to a mandolin's highest open string. */
const pitch = fc.integer({ min: 23, max: 76 });

/** Tunings of four to eight strings in whatever order, some of courses, some with a string that begins at fret 5. */
export const randomTuning: fc.Arbitrary<Tuning> = fc
  .record({
    midis: fc.array(pitch, { minLength: 4, maxLength: 8 }),
    courses: fc.boolean(),
    short: fc.boolean(),
  })
  .map(({ midis, courses, short }) => tuningOf(midis, courses, short));

/** Two tunings of one instrument, with as many strings or fewer in one of them. */
export const randomPair: fc.Arbitrary<readonly [Tuning, Tuning]> = fc
  .record({
    from: fc.array(pitch, { minLength: 4, maxLength: 8 }),
    moves: fc.array(fc.integer({ min: -14, max: 14 }), { minLength: 8, maxLength: 8 }),
    left: fc.integer({ min: 3, max: 8 }),
    courses: fc.boolean(),
    turned: fc.boolean(),
  })
  .map(({ from, moves, left, courses, turned }) => {
    const count = Math.min(left, from.length);
    const to = from.map((midi, at) => midi + (moves[at] ?? 0)).slice(from.length - count);
    const pair = [tuningOf(from, courses, false), tuningOf(to, courses, false)] as const;
    return turned ? [pair[1], pair[0]] : pair;
  });

function tuningOf(midis: readonly number[], courses: boolean, short: boolean): Tuning {
  const context = { key: undefined, tuningNames: [] };
  const strings = midis.map((midi, at) => {
    const first = { name: spellMidi(midi, context), midi };
    const second = { name: spellMidi(midi + 12, context), midi: midi + 12 };
    const firstFret = short && at === 0 ? 5 : 0;
    return {
      pitches: courses ? ([first, second] as const) : ([first] as const),
      firstFret,
      octaveInferred: false,
    };
  });
  return { strings, name: undefined, text: 'random' };
}
