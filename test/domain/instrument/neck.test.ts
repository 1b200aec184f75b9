import assert from 'node:assert/strict';
import fc from 'fast-check';
import { readFretCount } from '../../../src/instrument/frets';
import { fretDistance, spanBetween } from '../../../src/instrument/neck';
import { readScaleLength } from '../../../src/instrument/scaleLength';
import { errorOf, valueOf } from './read';

describe('the neck', () => {
  // T15: distances of frets from the nut, computed from equal temperament; the same table is in lutherie handbooks.
  const DISTANCES: readonly (readonly [fret: number, inches: number, millimetres: number])[] = [
    [1, 1.4312, 36.37],
    [5, 6.3966, 162.55],
    [7, 8.4808, 215.51],
    [12, 12.75, 324],
    [24, 19.125, 486],
  ];
  for (const [fret, inches, millimetres] of DISTANCES) {
    it(`has fret ${fret} at ${inches} in of 25.5 in, and at ${millimetres} mm of 648 mm`, () => {
      assert.ok(Math.abs(fretDistance(fret, 25.5) - inches) <= 0.00005001);
      assert.ok(Math.abs(fretDistance(fret, 648) - millimetres) <= 0.005001);
    });
  }

  it('divides what is left of the string by 17.817154 at each fret (the rule of makers)', () => {
    let left = 648;
    for (let fret = 1; fret <= 24; fret++) {
      left -= left / 17.817154;
      assert.ok(Math.abs(648 - left - fretDistance(fret, 648)) < 1e-4, String(fret));
    }
  });

  // Spans on 648 mm in whole millimetres, computed; from the table of playing conventions, which gives 79.49 as 80.
  const SPANS =
    '1-4 97, 1-5 126, 2-5 92, 5-8 77, 5-9 100, 7-10 69, 7-11 89, 9-13 80, 12-15 52, 12-16 67, 12-17 81';
  for (const row of SPANS.split(', ')) {
    const [a = 0, b = 0, span = 0] = row.split(/[- ]/).map(Number);
    it(`spans ${span} mm from fret ${a} to fret ${b}`, () => {
      assert.ok(Math.abs(spanBetween(a, b, 648) - span) < 0.52);
      assert.equal(spanBetween(b, a, 648), spanBetween(a, b, 648));
    });
  }
});

describe('the value of scale length', () => {
  const READ: readonly (readonly [string, number])[] = [
    ['648 mm', 648],
    ['648mm', 648],
    ['64.8 cm', 648],
    ['25.5 in', 647.7],
    ['25.5"', 647.7],
    ['25 1/2 in', 647.7],
    ['25,5 inches', 647.7],
    ['  34 in. ', 863.6],
  ];
  for (const [text, millimetres] of READ) {
    it(`reads “${text}”`, () => assert.equal(valueOf(readScaleLength(text)), millimetres));
  }

  const ERRORS: readonly (readonly [string, string, string | undefined])[] = [
    ['648', 'scale-length-unit', '648 mm'],
    ['25.5', 'scale-length-unit', '25.5 in'],
    ['25.5 mm', 'scale-length-range', '25.5 in'],
    ['99 mm', 'scale-length-range', undefined],
    ['2001 mm', 'scale-length-range', undefined],
    ['long', 'scale-length', '648 mm'],
    ['', 'scale-length', '648 mm'],
  ];
  for (const [text, kind, offer] of ERRORS) {
    it(`tells what is wrong with “${text}”`, () => {
      const error = errorOf(readScaleLength(text));
      assert.equal(error.kind, kind);
      if (offer !== undefined) assert.equal(error.suggestions[0], offer);
    });
  }
});

describe('the value of frets', () => {
  it('is a whole number from 1 to 36', () => {
    assert.equal(valueOf(readFretCount(' 22 ')), 22);
    assert.equal(valueOf(readFretCount('1 fret')), 1);
    assert.equal(valueOf(readFretCount('36 frets')), 36);
    for (const text of ['0', '37', '', 'many', '2.5', '-3']) {
      assert.equal(errorOf(readFretCount(text), text).kind, 'fret-count');
    }
    assert.deepEqual(errorOf(readFretCount('40')).suggestions, ['36']);
  });
});

describe('laws of the neck’s values', () => {
  it('no text throws', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.string({ unit: fc.constantFrom(...'0123456789.,/ mincf"') }),
        ),
        (text) => {
          for (const read of [readScaleLength(text), readFretCount(text)]) {
            if (read.ok) assert.ok(read.value >= 1 && read.value <= 2000);
            else assert.ok(read.error.start <= read.error.end && read.error.end <= text.length);
          }
        },
      ),
      { numRuns: 3000 },
    );
  });
});
