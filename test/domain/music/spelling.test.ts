import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Note } from 'tonal';
import { keyScale, readKey, type Key } from '../../../src/music/key';
import {
  formatNoteName,
  midiOf,
  parsePitchName,
  pitchClassOf,
  type PitchName,
} from '../../../src/music/noteName';
import { spellMidi } from '../../../src/music/spelling';

function keyOf(text: string): Key {
  const read = readKey(text);
  assert.ok(read.ok);
  return read.value;
}

function namesOf(text: string): PitchName[] {
  return text.split(' ').map((word) => {
    const name = parsePitchName(word);
    assert.ok(name);
    return name;
  });
}

const STANDARD = namesOf('E A D G B E');

describe('Spelling a note: the key first, then the tuning (common practice, no source)', () => {
  for (const [what, midi, key, tuning, expected] of [
    ['G# in E major', 56, 'E', 'E A D G B E', 'G#3'],
    ['Ab in Eb major', 56, 'Eb', 'E A D G B E', 'Ab3'],
    ['flats in an Eb tuning', 56, undefined, 'Eb Ab Db Gb Bb Eb', 'Ab3'],
    ['the key goes before the tuning', 56, 'E', 'Eb Ab Db Gb Bb Eb', 'G#3'],
    ['sharps in a C# tuning', 51, undefined, 'C# G# C# F# A# D#', 'D#3'],
    ['F# from open D', 54, undefined, 'D A D F# A D', 'F#3'],
    ['A# beside it, since that tuning is in sharps', 58, undefined, 'D A D F# A D', 'A#3'],
    ['no key, plain tuning: Bb', 58, undefined, 'D A D G A D', 'Bb3'],
    ['no key, plain tuning: C#', 61, undefined, 'D A D G A D', 'C#4'],
    ['Cb belongs to the octave above its sound', 59, 'Gb', 'E A D G B E', 'Cb4'],
    ['B# to the one below', 60, 'C#', 'E A D G B E', 'B#3'],
    ['the raised seventh of A minor', 56, 'Am', 'E A D G B E', 'G#3'],
    ['a string tuned 14 cents flat', 55.86, 'E', 'E A D G B E', 'G#3'],
  ] as const) {
    it(what, () => {
      const context = { key: key === undefined ? undefined : keyOf(key), tuningNames: namesOf(tuning) };
      assert.equal(formatNoteName(spellMidi(midi, context)), expected);
    });
  }

  it('keeps the pitch, in every key and octave; tonal 6.4.3 reads the same MIDI number', () => {
    const keys = fc.constantFrom(
      undefined,
      ...'C G D A E B F# C# F Bb Eb Ab Db Gb Cb Am Em A#m Abm C#m'.split(' '),
    );
    fc.assert(
      fc.property(fc.integer({ min: 12, max: 120 }), keys, (midi, key) => {
        const note = spellMidi(midi, {
          key: key === undefined ? undefined : keyOf(key),
          tuningNames: STANDARD,
        });
        assert.equal(midiOf(note), midi);
        assert.equal(Note.midi(formatNoteName(note)), midi);
        assert.ok(Math.abs(note.alter) <= 1);
      }),
    );
  });

  it('spells the scale as the scale is spelled', () => {
    for (const text of ['E', 'Db', 'F# dorian', 'Bb mixolydian', 'G#m']) {
      const key = keyOf(text);
      for (const { letter, alter } of keyScale(key)) {
        if (Math.abs(alter) > 1) continue;
        const spelled = spellMidi(60 + pitchClassOf({ letter, alter }), { key, tuningNames: STANDARD });
        assert.deepEqual([spelled.letter, spelled.alter], [letter, alter]);
      }
    }
  });
});
