import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Scale } from 'tonal';
import { createFingerboard } from '../../../../src/instrument/sounding';
import { scaleSets, scaleSetsInWords } from '../../../../src/service/sheet/scaleSets';
import { randomTuning } from '../../instrument/randomTuning';
import { sheetOf } from './ask';

describe('The tuning sheet: the frets of the scale', () => {
  it('are sets that strings share, the last one “the others”', () => {
    // G major is G A B C D E F#: frets counted by hand on the strings of open G, D G D G B D.
    const { scale } = sheetOf('tuning: open G\nkey: G');
    assert.equal(
      scale?.words,
      'G major: 0 2 4 5 7 9 10 12 on strings 6, 4 and 1; 0 2 4 5 7 9 11 12 on strings 5 and 3; 0 1 3 5 7 8 10 12 on string 2',
    );
    assert.equal(
      sheetOf('tuning: G2 D3 G3 D4\nkey: G').scale?.words,
      'G major: 0 2 4 5 7 9 11 12 on strings 4 and 2; 0 2 4 5 7 9 10 12 on the others',
    );
  });

  it('can be told by the notes of the open strings', () => {
    const { scale } = sheetOf('tuning: DADGAD\nkey: D');
    assert.equal(
      scaleSetsInWords(scale?.sets ?? [], 'notes'),
      '0 2 4 5 7 9 11 12 on the D strings; 0 2 4 5 7 9 10 12 on the A strings; 0 2 4 6 7 9 11 12 on the G string',
    );
    // Under a partial capo strings of one note differ, so numbers tell them apart.
    const capo = sheetOf('tuning: DADGAD\ncapo: 3 on 4 3\nkey: D').scale;
    assert.doesNotMatch(scaleSetsInWords(capo?.sets ?? [], 'notes'), /the D string/);
    assert.match(scaleSetsInWords(capo?.sets ?? [], 'notes'), /on strings 6 and 1; .*on string 4/);
  });

  it('is not there without a key', () => assert.equal(sheetOf('tuning: DADGAD').scale, null));

  it('laws: exactly the frets whose notes tonal’s scale has; each string stands in one set', () => {
    const tonics = ['C', 'G', 'D', 'A', 'E', 'F', 'Bb', 'Eb'] as const;
    const names = ['major', 'minor', 'dorian', 'mixolydian', 'lydian', 'minor pentatonic'] as const;
    fc.assert(
      fc.property(
        randomTuning,
        fc.constantFrom(...tonics),
        fc.constantFrom(...names),
        (tuning, tonic, name) => {
          const classes = scaleClasses(`${tonic} ${name}`);
          const board = createFingerboard(tuning, undefined, 22);
          const sets = scaleSets(board, classes);
          const all = sets.flatMap(({ strings }) => strings).sort();
          assert.deepEqual(
            all,
            tuning.strings.map((_, at) => at + 1),
          );
          for (const { strings, frets } of sets)
            for (const number of strings) {
              const index = tuning.strings.length - number;
              const expected = Array.from({ length: 13 }, (_, fret) => fret).filter((fret) => {
                const midi = board.pitches(index, fret)?.[0];
                return midi !== undefined && classes.includes(midi % 12);
              });
              assert.deepEqual(frets, expected);
            }
        },
      ),
    );
  });
});

/** The pitch classes of a scale as the library tonal has them. */
function scaleClasses(name: string): readonly number[] {
  const { chroma, tonic } = Scale.get(name);
  assert.ok(tonic !== null && chroma !== '', name);
  // tonal gives twelve bits counted from C.
  return Array.from(chroma).flatMap((bit, at) => (bit === '1' ? [at] : []));
}
