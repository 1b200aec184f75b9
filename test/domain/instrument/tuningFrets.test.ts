import assert from 'node:assert/strict';
import fc from 'fast-check';
import { createFingerboard } from '../../../src/instrument/sounding';
import { stringIndex, type Tuning } from '../../../src/instrument/tuning';
import { octaveChecks, stepsToNext, tuneByFrets, type EarCheck } from '../../../src/instrument/tuningFrets';
import { tuning } from './read';
import { randomTuning } from './randomTuning';
import { TUNING_TABLE } from './tuningTable';

describe('The fret that tunes the next string (T5: column Δ of the handbook table of tunings)', () => {
  for (const { row, instrument, name, notes, frets, source } of TUNING_TABLE)
    it(`row ${row}: ${name} on the ${instrument}, ${frets.join(' ')} (${source})`, () => {
      const read = tuning(notes, instrument);
      assert.deepEqual(stepsToNext(read), [...frets, undefined]);
      // What is told to a player are the same frets; for a lower next string it is that one which is stopped.
      const long = read.strings[0]?.firstFret === 0 ? frets : frets.slice(1);
      const told = tuneByFrets(read, 24).slice(0, long.length);
      assert.deepEqual(
        told.map(({ fret, stops }) => (stops === 'string' ? -fret : fret)),
        long,
      );
    });

  it('the banjo’s fifth string is tuned by string 1 at fret 5 in open G [read in the cited source], 4 in open D', () => {
    const last = (value: string): EarCheck | undefined => tuneByFrets(tuning(value, 'banjo'), 22).at(-1);
    assert.deepEqual(last('open G'), { string: 5, by: 1, fret: 5, stops: 'by', apart: 0 });
    assert.deepEqual(last('open D'), { string: 5, by: 1, fret: 4, stops: 'by', apart: 0 });
  });

  it('string 1 of standard is two octaves above string 6 (T5)', () => {
    const { strings } = tuning('standard');
    assert.equal((strings[5]?.pitches[0].midi ?? 0) - (strings[0]?.pitches[0].midi ?? 0), 24);
  });

  it('a tuning written with cents says how far the string is meant from the fret', () => {
    const check = tuneByFrets(tuning('E2 B2 E3 G#3-14c B3 E4'), 22).find(({ string }) => string === 3);
    assert.deepEqual(check, { string: 3, by: 4, fret: 4, stops: 'by', apart: -0.14 });
  });
});

describe('Octaves between strings', () => {
  it('are the frets that players use in standard (common practice, no source)', () => {
    const told = octaveChecks(tuning('standard'), 22).map(({ string, by, fret, apart }) => [
      string,
      by,
      fret,
      apart,
    ]);
    assert.deepEqual(told, [
      [6, 4, 2, -12],
      [5, 3, 2, -12],
      [4, 2, 3, -12],
      [3, 1, 3, -12],
      [2, 5, 2, 12],
      [1, 4, 2, 12],
    ]);
  });
});

describe('laws of checks by ear', () => {
  /** What a check says, worked out on the fingerboard alone. */
  const heard = (of: Tuning, frets: number, { string, by, fret, stops }: EarCheck): number => {
    const board = createFingerboard(of, undefined, frets);
    const at = (number: number, written: number): number =>
      board.pitches(stringIndex(of, number), written)?.[0] ?? NaN;
    return at(string, stops === 'string' ? fret : 0) - at(by, stops === 'by' ? fret : 0);
  };

  it('every check is what the two strings then sound, at a fret that the neck has', () => {
    fc.assert(
      fc.property(randomTuning, fc.integer({ min: 12, max: 24 }), (of, frets) => {
        for (const check of [...tuneByFrets(of, frets), ...octaveChecks(of, frets)])
          assert.ok(Math.abs(heard(of, frets, check) - check.apart) < 1e-3, JSON.stringify(check));
      }),
    );
  });

  it('each string but one is tuned by another', () => {
    fc.assert(
      fc.property(randomTuning, (of) => {
        const tuned = tuneByFrets(of, 22).map(({ string }) => string);
        assert.equal(tuned.length, of.strings.length - 1);
        assert.equal(new Set(tuned).size, tuned.length);
      }),
    );
  });
});
