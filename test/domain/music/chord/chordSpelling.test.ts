import assert from 'node:assert/strict';
import { Key as TonalKey } from 'tonal';
import { nameChord } from '../../../../src/music/chord/nameChord';
import { keyScale, readKey, type Key } from '../../../../src/music/key';
import { formatPitchName, pitchClassOf, type PitchName } from '../../../../src/music/noteName';

const MAJOR = 'Cb Gb Db Ab Eb Bb F C G D A E B F# C#'.split(' ');
const MINOR = 'Ab Eb Bb F C G D A E B F# C# G# D# A#'.split(' ');

function keyOf(text: string): Key {
  const read = readKey(text);
  assert.ok(read.ok);
  return read.value;
}

/** Notes stacked upwards from the first. */
function stack(notes: readonly PitchName[]): number[] {
  let last = 40;
  return notes.map((note) => {
    last += (pitchClassOf(note) - last + 120) % 12 || 12;
    return last;
  });
}

describe('G8: the diatonic chords of 30 keys', () => {
  it('420 of 420 have their root and every tone as the key spells them', () => {
    let count = 0;
    for (const key of [
      ...MAJOR.map((tonic) => keyOf(`${tonic} major`)),
      ...MINOR.map((tonic) => keyOf(`${tonic} minor`)),
    ]) {
      const scale = keyScale(key);
      for (let i = 0; i < 7; i++) {
        for (const size of [3, 4]) {
          const notes = Array.from({ length: size }, (_, k) => scale[(i + 2 * k) % 7]).filter(
            (note) => note !== undefined,
          );
          const [first] = nameChord(stack(notes), { key }).names;
          assert.deepEqual(first?.root, notes[0]);
          assert.deepEqual([...(first?.tones ?? [])], notes.map(formatPitchName));
          count++;
        }
      }
    }
    assert.equal(count, 420);
  });

  it('the sevenths are the ones that tonal 6.4.3 lists for each key', () => {
    for (const tonic of [...MAJOR, ...MINOR.map((minor) => `${minor}m`)]) {
      const key = keyOf(tonic);
      const theirs = tonic.endsWith('m')
        ? TonalKey.minorKey(tonic.slice(0, -1)).natural.chords
        : TonalKey.majorKey(tonic).chords;
      const ours = keyScale(key).map((_, i, scale) => {
        const notes = [0, 2, 4, 6].map((k) => scale[(i + k) % 7]).filter((note) => note !== undefined);
        return nameChord(stack(notes), { key }).names[0]?.name;
      });
      assert.deepEqual(ours, [...theirs], tonic);
    }
  });
});

describe('Spelling of chord names (common practice, no source)', () => {
  const names = (text: string) =>
    text
      .split(' ')
      .map(
        (word) => ({ letter: word[0], alter: word[1] === 'b' ? -1 : word[1] === '#' ? 1 : 0 }) as PitchName,
      );
  for (const [what, midis, context, name, tones] of [
    ['G# in E major', [44, 47, 51], { key: keyOf('E') }, 'G#m', 'G# B D#'],
    ['Bb in C7', [48, 52, 58], {}, 'C7', 'C E Bb'],
    ['the Neapolitan of A minor', [46, 50, 53], { key: keyOf('Am') }, 'Bb', 'Bb D F'],
    ['flats in an Eb tuning', [44, 47, 51], { tuningNames: names('Eb Ab Db Gb Bb Eb') }, 'Abm', 'Ab Cb Eb'],
    [
      'B in an Eb tuning keeps its own sharps',
      [47, 51, 54],
      { tuningNames: names('Eb Ab Db Gb Bb Eb') },
      'B',
      'B D# F#',
    ],
    ['a double flat is written simply', [48, 51, 54, 57], {}, 'Cdim7', 'C Eb Gb A'],
    ['no key, no tuning', [46, 50, 53], {}, 'Bb', 'Bb D F'],
    ['no key, minor on the sharp side', [49, 52, 56], {}, 'C#m', 'C# E G#'],
    ['no key, major on the flat side', [49, 53, 56], {}, 'Db', 'Db F Ab'],
  ] as const) {
    it(what, () => {
      const [first] = nameChord(midis, context).names;
      assert.equal(first?.name, name);
      assert.ok(first);
      assert.equal(first.tones.join(' '), tones);
    });
  }
});
