import assert from 'node:assert/strict';
import { handOptions } from '../../../../src/playing/hand/options';
import { findShapes } from '../../../../src/playing/shapes/findShapes';
import { guitar, OPENS, targetOf } from '../boards';
import { everyShape } from './exhaustive';
import { wanted } from './known';

const CASES = [
  ['standard', OPENS.standard, 'C', 5, {}],
  ['standard', OPENS.standard, 'G/B', 5, {}],
  ['standard', OPENS.standard, 'Am7', 4, {}],
  ['DADGAD', OPENS.dadgad, 'Em7', 4, {}],
  ['open G', OPENS.openG, 'C7alt', 4, {}],
  ['ukulele', OPENS.ukulele, 'G7', 12, {}],
  ['standard', OPENS.standard, 'E', 5, { thumb: true }],
  ['DADGAD', OPENS.dadgad, 'F', 5, { thumb: true }],
] as const;

describe('the finder against a plain enumeration of all frets', () => {
  for (const [tuning, opens, name, highestFret, hand] of CASES) {
    it(`${name} in ${tuning} up to fret ${highestFret}${'thumb' in hand ? ' with the thumb' : ''}`, function () {
      this.timeout(20_000);
      const target = targetOf(guitar(opens));
      const options = handOptions(hand);
      const all = everyShape(wanted(name), target, options, highestFret, 3);
      const found = findShapes(wanted(name), target, { hand: options, limit: Infinity, highestFret });
      assert.ok(all.length > 3);
      assert.deepEqual(
        found.map(({ frets }) => frets.map((fret) => fret ?? 'x').join(' ')).sort(),
        [...all].sort(),
      );
    });
  }

  it('the best of all is the first of twelve, and of a plain list the first twelve are the cheapest', () => {
    for (const [, opens, name] of CASES) {
      const target = targetOf(guitar(opens));
      const hand = handOptions();
      const every = findShapes(wanted(name), target, { hand, limit: Infinity });
      const plain = findShapes(wanted(name), target, { hand, limit: 12, spread: false });
      assert.deepEqual(
        plain.map(({ cost }) => cost.toFixed(6)),
        every.slice(0, plain.length).map(({ cost }) => cost.toFixed(6)),
        name,
      );
    }
  }).timeout(30_000);
});
