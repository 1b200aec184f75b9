import assert from 'node:assert/strict';
import { formatNoteName, midiOf } from '../../../src/music/noteName';
import { readVoice, readVoiceRange, VOICE_RANGES } from '../../../src/music/voices';

describe('ranges of voices', () => {
  // Bristol A Cappella, “Range check”, its table of six parts without the notes in brackets.
  const TABLE = {
    soprano: 'C4 A5',
    'mezzo-soprano': 'A3 F5',
    alto: 'F3 D5',
    tenor: 'D3 A4',
    baritone: 'B2 F4',
    bass: 'G2 D4',
  };
  it('are those of the published table', () => {
    const told = VOICE_RANGES.map(({ name, low, high }) => [
      name,
      `${formatNoteName(low)} ${formatNoteName(high)}`,
    ]);
    assert.deepEqual(Object.fromEntries(told), TABLE);
  });

  it('lie within a minor third of another table, that of a course in music theory', () => {
    // “Appropriate ranges for singing voices”, moonshizzleproductions.com, 2011, of four parts; its bass goes down to C2,
    // which the first table has in brackets.
    for (const [name, notes] of Object.entries({ soprano: 'C4-G5', alto: 'G3-D5', tenor: 'D3-G4' })) {
      const [voice, other] = [readVoice(name), readVoiceRange(notes)];
      assert.ok(voice.ok && other.ok);
      for (const end of ['low', 'high'] as const)
        assert.ok(Math.abs(midiOf(voice.value[end]) - midiOf(other.value[end])) <= 3, `${name} ${end}`);
    }
  });

  it('are read by name, by alias and by two notes', () => {
    const low = (text: string): string => {
      const read = readVoice(text);
      return read.ok ? formatNoteName(read.value.low) : read.error.kind;
    };
    assert.deepEqual(['Alto', ' contralto ', 'mezzo', 'BASS', 'alt'].map(low), [
      'F3',
      'F3',
      'A3',
      'G2',
      'voice',
    ]);
    for (const text of ['A3-D5', 'a3 to d5', 'A3 D5', 'A3–D5', ' D5 - A3 ']) {
      const read = readVoiceRange(text);
      assert.ok(read.ok, text);
      assert.equal(read.value.name, 'A3–D5');
    }
    const flats = readVoiceRange('Bb3-Eb5');
    assert.ok(flats.ok);
    assert.equal(midiOf(flats.value.low), 58);
  });

  it('what is no range is told', () => {
    for (const [text, kind] of [
      ['A-D', 'voice-range'],
      ['A3', 'voice-range'],
      ['', 'voice-range'],
      ['A3-B3', 'voice-narrow'],
    ] as const) {
      const read = readVoiceRange(text);
      assert.ok(!read.ok, text);
      assert.equal(read.error.kind, kind);
    }
  });
});
