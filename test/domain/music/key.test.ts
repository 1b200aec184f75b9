import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Mode as TonalMode } from 'tonal';
import {
  degreeInKey,
  formatKey,
  isInKey,
  keyScale,
  readKey,
  signatureOf,
  transposeKey,
  type Key,
} from '../../../src/music/key';
import { formatPitchName, pitchClassOf } from '../../../src/music/noteName';

const TONICS = 'C C# Db D Eb E F F# Gb G G# Ab A A# Bb B Cb'.split(' ');
const MODES = ['major', 'minor', 'dorian', 'phrygian', 'lydian', 'mixolydian', 'locrian'] as const;

function keyOf(text: string): Key {
  const read = readKey(text);
  assert.ok(read.ok, text);
  return read.value;
}

describe('Reading a key', () => {
  for (const [texts, expected] of [
    ['D|d|D major|D maj|DM|D Major|D ionian', 'D major'],
    ['E minor|Em|e minor|E min|Emin|E aeolian|E-minor', 'E minor'],
    ['D mixolydian|D Mixolydian|D mix|Dmix', 'D mixolydian'],
    ['F# dorian|F♯ dorian|F sharp dorian|f# dor', 'F# dorian'],
    ['Bb maj|bb|B♭|B flat|B-flat major', 'Bb major'],
    ['Bm|b minor', 'B minor'],
    ['A phrygian', 'A phrygian'],
    ['Eb lydian', 'Eb lydian'],
    ['  B locrian ', 'B locrian'],
  ] as const) {
    it(texts, () => {
      for (const text of texts.split('|')) assert.equal(formatKey(keyOf(text)), expected, text);
    });
  }

  for (const [text, kind, message, start, end] of [
    ['H', 'key-tonic', /H is B here/, 0, 1],
    ['H minor', 'key-tonic', /H is B here/, 0, 1],
    ['Dfoo', 'key-mode', /"foo" is no mode: major, minor, dorian/, 1, 4],
    [' D blues', 'key-mode', /"blues" is no mode/, 3, 8],
    ['Ebb', 'key-tonic', /one sharp, one flat or none/, 0, 3],
    ['', 'key', /A key is a tonic A–G and a mode/, 0, 0],
    ['minor', 'key', /such as D, E minor/, 0, 5],
  ] as const) {
    it(`"${text}" is told`, () => {
      const read = readKey(text);
      assert.ok(!read.ok);
      assert.equal(read.error.kind, kind);
      assert.match(read.error.message, message);
      assert.deepEqual([read.error.start, read.error.end], [start, end]);
    });
  }

  it('every key that is written reads again', () => {
    for (const tonic of TONICS) {
      for (const mode of MODES) {
        const key = keyOf(`${tonic} ${mode}`);
        assert.equal(keyOf(formatKey(key)), key);
        assert.ok(Object.isFrozen(key) && Object.isFrozen(key.tonic) && Object.isFrozen(keyScale(key)));
      }
    }
  });
});

describe('The notes of a key', () => {
  it('are those of tonal 6.4.3 in 17 tonics and 7 modes', () => {
    for (const tonic of TONICS) {
      for (const mode of MODES) {
        assert.deepEqual(
          keyScale(keyOf(`${tonic} ${mode}`)).map(formatPitchName),
          TonalMode.notes(mode, tonic),
          `${tonic} ${mode}`,
        );
      }
    }
  });

  it('signatures (handbook knowledge, from memory)', () => {
    for (const [key, sharps] of [
      ['C', 0],
      ['G', 1],
      ['C#', 7],
      ['F', -1],
      ['Cb', -7],
      ['Am', 0],
      ['D mixolydian', 1],
      ['F lydian', 0],
    ] as const) {
      assert.equal(signatureOf(keyOf(key)), sharps, key);
    }
  });
});

describe('The degree of a note in a key, against the major scale of its tonic (common practice, no source)', () => {
  for (const [key, midi, text, words] of [
    ['D mixolydian', 50, '1', 'root'],
    ['D mixolydian', 57, '5', 'fifth'],
    ['D mixolydian', 60, 'b7', 'flat seventh'],
    ['E minor', 55, 'b3', 'flat third'],
    ['E minor', 56, '3', 'third'],
    ['C', 66, '#4', 'sharp fourth'],
    ['C', 61, 'b2', 'flat second'],
    ['F lydian', 59, '#4', 'sharp fourth'],
    ['B locrian', 65, 'b5', 'flat fifth'],
    ['C', 63.86, '3', 'third'],
  ] as const) {
    it(`${midi} in ${key} is ${text}`, () => {
      const degree = degreeInKey(keyOf(key), midi);
      assert.deepEqual([degree.text, degree.words], [text, words]);
      assert.equal(
        degree.text,
        (degree.alter < 0 ? 'b' : degree.alter > 0 ? '#' : '') + String(degree.number),
      );
    });
  }

  it('the seven notes of a key are its seven numbers', () => {
    for (const mode of MODES) {
      const key = keyOf(`Eb ${mode}`);
      assert.deepEqual(
        keyScale(key).map((note) => degreeInKey(key, 60 + pitchClassOf(note)).number),
        [1, 2, 3, 4, 5, 6, 7],
      );
    }
  });
});

describe('Moving a key', () => {
  for (const [key, halfSteps, expected] of [
    ['D mixolydian', 2, 'E mixolydian'],
    ['C', 1, 'Db major'],
    ['C', 6, 'F# major'],
    ['F', 1, 'Gb major'],
    ['G#m', 0, 'G# minor'],
    ['Am', -1, 'G# minor'],
    ['Em', -1, 'Eb minor'],
    ['Dm', 1, 'Eb minor'],
    ['C', 12, 'C major'],
  ] as const) {
    it(`${key} by ${halfSteps} is ${expected}`, () => {
      const moved = formatKey(transposeKey(keyOf(key), halfSteps));
      // Six sharps and six flats are equally simple: either side will do.
      assert.ok(moved === expected || Math.abs(signatureOf(keyOf(expected))) === 6, moved);
    });
  }

  it('all its notes move with it, in six signs or fewer', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TONICS),
        fc.constantFrom(...MODES),
        fc.integer({ min: -30, max: 30 }),
        (tonic, mode, by) => {
          const key = keyOf(`${tonic} ${mode}`);
          const moved = transposeKey(key, by);
          if (by % 12 !== 0) assert.ok(Math.abs(signatureOf(moved)) <= 6);
          for (const note of keyScale(key)) assert.ok(isInKey(moved, (pitchClassOf(note) + by + 36) % 12));
        },
      ),
    );
  });
});
