import assert from 'node:assert/strict';
import { findInstrument, GUITAR } from '../../../../src/instrument/instruments';
import type { Instrument } from '../../../../src/instrument/instrument';
import type { Tuning } from '../../../../src/instrument/tuning';
import { findTuning } from '../../../../src/instrument/tunings';
import { stringBears } from '../../../../src/playing/suit/suit';

function tuningOf(name: string, instrument: Instrument): Tuning {
  const found = findTuning(name, instrument);
  assert.ok(found, name);
  return { strings: found.strings, name, text: name };
}

function instrumentOf(name: string): Instrument {
  const found = findInstrument(name);
  assert.ok(found, name);
  return found;
}

function usual(instrument: Instrument): Tuning {
  return tuningOf('half step down', instrument);
}

/** For each string, low string first, the most half steps up to 6 that are offered. */
function most(start: Tuning, instrument: Instrument, scaleLength = instrument.scaleLength): number[] {
  const bears = stringBears(start, instrument, scaleLength);
  return start.strings.map((_, index) => [6, 5, 4, 3, 2, 1].find((by) => bears(index, by)) ?? 0);
}

describe('what a string is offered to bear', () => {
  it('is two half steps above the usual tuning at most, wherever the passage stands', () => {
    assert.deepEqual(most(tuningOf('standard', GUITAR), GUITAR), [2, 2, 2, 2, 2, 2]);
    assert.deepEqual(most(tuningOf('drop D', GUITAR), GUITAR), [4, 2, 2, 2, 2, 2]);
    assert.deepEqual(most(tuningOf('open G', GUITAR), GUITAR), [4, 4, 2, 2, 2, 4]);
    assert.deepEqual(most(usual(GUITAR), GUITAR), [3, 3, 3, 3, 3, 3]);
  });

  it('always lets a string stay or go down, also one strung for more', () => {
    const bears = stringBears(tuningOf('high strung', GUITAR), GUITAR, 648);
    for (let index = 0; index < 6; index++) for (const by of [0, -1, -2]) assert.ok(bears(index, by));
    assert.deepEqual(most(tuningOf('high strung', GUITAR), GUITAR), [0, 0, 0, 0, 2, 2]);
  });

  // shared/facts/strings-and-frets.md §2.3: half steps to 70 % of the least strength at 648 mm: .010 E4 2.3.
  it('is not beyond 70 % of the least strength of plain steel: a longer neck bears less', () => {
    const standard = tuningOf('standard', GUITAR);
    assert.equal(most(standard, GUITAR, 648).at(-1), 2);
    // 648 · 2^(0.3 / 12) = 659 mm is where 2.3 has become 2.
    assert.equal(most(standard, GUITAR, 657).at(-1), 2);
    assert.equal(most(standard, GUITAR, 664).at(-1), 1);
    assert.equal(most(standard, GUITAR, 760).at(-1), 0);
    assert.equal(most(standard, GUITAR, 760)[3], 2, 'a plain third string has room: 10.7 half steps');
  });

  // The same table: .008 G4, the octave of the third course, is at −0.4.
  it('asks both strings of a course', () => {
    const twelve = instrumentOf('12-string guitar');
    const start = tuningOf('whole step down', twelve);
    const [, , , third] = most(start, twelve);
    assert.equal(third, 1, 'two half steps down from G4 there is room for one');
    assert.equal(most(usual(twelve), twelve)[3], 0);
  });

  // Nylon is no steel: .028 to .040 in stand in no table of music wire, so only the two half steps hold.
  it('has no steel figure for nylon', () => {
    const classical = instrumentOf('classical guitar');
    assert.deepEqual(most(tuningOf('standard', classical), classical, 760), [2, 2, 2, 2, 2, 2]);
  });

  // Pitch times length: A4 · 584 mm is 257 Hz·m, beyond √0.7 · 290 = 243.
  it('keeps a string that already is at the line', () => {
    const tenor = instrumentOf('tenor guitar');
    const start = tuningOf('half step down', tenor);
    assert.equal(most(start, tenor).at(-1), 0);
  });
});
