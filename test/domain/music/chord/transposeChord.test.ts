import assert from 'node:assert/strict';
import fc from 'fast-check';
import { writtenTypes } from '../../../../src/music/chord/chordTypes';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { transposeWrittenChord } from '../../../../src/music/chord/transposeChord';
import { writtenMask } from '../../../../src/music/chord/writtenChord';
import { readKey } from '../../../../src/music/key';
import { pitchClassOf } from '../../../../src/music/noteName';

describe('Moving a written chord', () => {
  for (const [text, halfSteps, key, expected] of [
    ['CM7/E', 2, undefined, 'DM7/F#'],
    ['D/F#', 2, undefined, 'E/G#'],
    ['Am7 / G', 3, undefined, 'Cm7 / Bb'],
    ['C-7', 3, undefined, 'Eb-7'],
    ['C69', 1, undefined, 'Db69'],
    ['C6/9', -1, undefined, 'B6/9'],
    ['A♭maj7', 1, undefined, 'Amaj7'],
    ['F#m7/E', -1, undefined, 'Fm7/Eb'],
    ['Bbb5', 2, undefined, 'C(b5)'],
    ['B7/D#', 2, 'Gb', 'Db7/F'],
    ['B7/D#', 2, 'F#', 'C#7/E#'],
    ['N.C.', 5, undefined, 'N.C.'],
    ['foo', 5, undefined, 'foo'],
    ['C#', 12, undefined, 'C#'],
    ['C#', 0, 'Db', 'Db'],
  ] as const) {
    it(`${text} by ${halfSteps}${key ? ` in ${key}` : ''} → ${expected}`, () => {
      const read = key === undefined ? undefined : readKey(key);
      assert.equal(transposeWrittenChord(text, halfSteps, read?.ok ? read.value : undefined), expected);
    });
  }

  it('root, bass and tones move together, whatever the chord', () => {
    const roots = fc.constantFrom(...'C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B Cb'.split(' '));
    const symbols = fc.constantFrom(...writtenTypes().map(({ symbol }) => symbol));
    const basses = fc.oneof(
      fc.constant(''),
      roots.map((root) => `/${root}`),
    );
    fc.assert(
      fc.property(roots, symbols, basses, fc.integer({ min: -14, max: 14 }), (root, symbol, bass, by) => {
        const from = readChordName(root + symbol + bass);
        const to = readChordName(transposeWrittenChord(root + symbol + bass, by));
        assert.ok(from.ok && to.ok && from.value.root && to.value.root);
        const moved = (pitchClass: number) => (pitchClass + by + 24) % 12;
        assert.equal(pitchClassOf(to.value.root), moved(pitchClassOf(from.value.root)));
        assert.equal(
          writtenMask(to.value),
          writtenMask(from.value),
          transposeWrittenChord(root + symbol + bass, by),
        );
        const [low, lowMoved] = [from.value.bass, to.value.bass];
        assert.equal(lowMoved && pitchClassOf(lowMoved), low && moved(pitchClassOf(low)));
      }),
      { numRuns: 3000 },
    );
  });
});
