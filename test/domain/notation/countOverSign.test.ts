import assert from 'node:assert/strict';
import { toNumber } from '../../../src/music/fraction';
import { Document } from '../../../src/notation/document';

/** A syllable over any column of a note pins it, also over the sign that brings it from nowhere (section 7 of the notation). */
describe('a count over the sign that brings a note', () => {
  const count = 'count |1   2   3   4   |\n';
  const rows: readonly [string, string, readonly number[]][] = [
    ['a slide whose fret has the syllable', `${count}E4    |5--/12--10------|`, [0, 1, 2]],
    ['a slide from nowhere under its beat', `${count}E4    |5--./12-10------|`, [0, 1, 2]],
    ['a slide off a string at rest', `${count}E4    |----\\12-10------|`, [1, 2]],
    ['a tap', `${count}E4    |0---t12-10------|`, [0, 1, 2]],
    [
      'not where the note has a syllable of its own',
      'count |1   2e  3   4   |\nE4    |----/7--9-------|',
      [1.25, 2],
    ],
    [
      'not where another note stands below',
      `${count}E4    |----/12-10------|\nB3    |----0-----------|`,
      [1, 1.25, 2],
    ],
    ['not where the sign touches a bend before it', `${count}E4    |-0b2h5--5-------|`, [0.25, 1.25, 2]],
    ['not where a sign joins it to the note before', `${count}E4    |---0h2--5-------|`, [0.75, 1.25, 2]],
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
