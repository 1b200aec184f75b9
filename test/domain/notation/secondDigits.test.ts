import assert from 'node:assert/strict';
import { toNumber } from '../../../src/music/fraction';
import { Document } from '../../../src/notation/document';

/** Room for a second digit carries no time, whether the fret is played or bent to (common practice, no source). */
describe('second digits without a count row', () => {
  const rows: readonly [string, string, readonly number[]][] = [
    ['of a fret', 'E|----10---8-5-----|\nB|---------------5-|', [1, 2, 2.5, 3.5]],
    ['of the fret that a bend goes to', 'E|----8b10r8-5-----|\nB|---------------5-|', [1, 2.5, 3.5]],
    [
      'of the fret that a note is bent to before',
      'E|----8pb10--5-----|\nB|---------------5-|',
      [1, 2.5, 3.5],
    ],
    ['but not the first digit of it', 'E|----8b9--8-5----|\nB|--------------5-|', [1, 2.25, 2.75, 3.5]],
    ['nor an amount', 'E|----8b1/2--5----|\nB|--------------5-|', [1, 2.75, 3.5]],
  ];
  for (const [name, text, onsets] of rows) {
    it(name, () => {
      const [system] = new Document(text).systems;
      assert.deepEqual(
        system?.reading.notes.map(({ onset }) => toNumber(onset)).sort((a, b) => a - b),
        onsets,
      );
    });
  }
});
