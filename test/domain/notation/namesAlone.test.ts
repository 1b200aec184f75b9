import assert from 'node:assert/strict';
import { formatFraction } from '../../../src/music/fraction';
import { Document } from '../../../src/notation/document';

// Section 7 of the notation, for rows alone: a chord begins where its name stands, as a note there would.

describe('when chords begin in rows alone', () => {
  const rows: readonly [string, string, readonly string[]][] = [
    ['columns that divide evenly', 'chords |G       D/F#    |', ['0', '2']],
    ['no padding is taken before a name', 'chords |G    D    |', ['0', '2']],
    [
      'an uneven bar goes to the nearest sixteenth or triplet',
      'chords |G      D   C |',
      ['0', '9/4', '10/3'],
    ],
    ['a second bar begins with its name', 'chords |G       |D       |', ['0', '4']],
    ['with a count', 'count  |  1   2   3   4   |\nchords |  G       D       |', ['0', '2']],
  ];
  for (const [name, text, onsets] of rows) {
    it(name, () => {
      const reading = new Document(text, {}).systems[0]?.reading;
      const chords = reading?.rows.find(({ row }) => row === 'chords');
      assert.deepEqual(
        chords?.marks.map(({ onset }) => formatFraction(onset)),
        onsets,
      );
    });
  }
});
