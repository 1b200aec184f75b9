import assert from 'node:assert/strict';
import { compareChord, compareChordName } from '../../../../src/music/chord/compareChord';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { parseNoteName, midiOf } from '../../../../src/music/noteName';

function midis(notes: string): number[] {
  return notes
    .split(' ')
    .filter(Boolean)
    .map((text) => {
      const note = parseNoteName(text);
      assert.ok(note, text);
      return midiOf(note);
    });
}

describe('A written chord held against what sounds (common practice, no source)', () => {
  for (const [name, notes, verdict, message] of [
    ['D', 'D3 F#3 A3 D4', 'agrees', ''],
    ['D', 'F#2 D3 A3', 'agrees', ''],
    ['C7', 'C3 E3 Bb3', 'agrees', ''],
    ['G13', 'G2 F3 B3 E4', 'agrees', ''],
    ['C11', 'C3 G3 Bb3 D4 F4', 'agrees', ''],
    ['N.C.', '', 'agrees', ''],
    ['D/F#', 'F#2 D3 A3', 'agrees', ''],
    ['C/D', 'D2 C3 E3 G3', 'agrees', ''],
    ['Dm', 'D3 A3 D4 F#4', 'disagrees', 'Dm is written, F# sounds: D.'],
    ['D', 'D3 A3 F4', 'disagrees', 'D is written, F sounds: Dm.'],
    ['Dsus4', 'D3 A3 F#4', 'disagrees', 'Dsus4 is written, F# sounds: D.'],
    ['C7', 'C3 E3 G3 B3', 'disagrees', 'C7 is written, B sounds: Cmaj7.'],
    ['C', 'C3 E3 Gb3', 'disagrees', 'C is written, Gb sounds: C(b5).'],
    ['D5', 'D3 A3 F#4', 'disagrees', 'D5 is written, F# sounds: D.'],
    ['D7(no3)', 'D3 A3 C4 F#4', 'disagrees', 'D7(no3) is written, F# sounds: D7.'],
    ['A', 'D3 F#3', 'disagrees', 'A is written, D and F# sound.'],
    ['N.C.', 'D3', 'disagrees', 'N.C. is written, D sounds.'],
    ['Dm', 'Db3 F3 Ab3', 'disagrees', 'Dm is written, Db and Ab sound: Db.'],
    ['D', 'D3 F#3 A3 E4', 'adds', 'D also has E sounding: Dadd9.'],
    ['D', 'D3 A3 D4', 'omits', 'D is written, no third sounds: D5.'],
    ['Em7', 'G3 B3 D4', 'omits', 'Em7 is written, its root E does not sound: G.'],
    ['C7', 'C3 E3 G3', 'omits', 'C7 is written, its seventh Bb does not sound: C.'],
    ['D', '', 'omits', 'D is written, nothing sounds.'],
    ['D/F#', 'D3 F#3 A3', 'bass', 'F# is not in the bass, D is: D.'],
  ] as const) {
    it(`${name} over ${notes || 'nothing'}: ${verdict}`, () => {
      const comparison = compareChordName(name, midis(notes));
      assert.ok(comparison);
      assert.equal(comparison.message, message);
      assert.equal(comparison.verdict, verdict);
    });
  }

  it('what it offers agrees with what sounds', () => {
    for (const [name, notes] of [
      ['Dm', 'D3 A3 D4 F#4'],
      ['C', 'C3 E3 G3 A3 D4'],
      ['G/B', 'G2 B2 D3'],
      ['E7', 'E2 B2 D3 G3'],
    ] as const) {
      const suggestion = compareChordName(name, midis(notes))?.suggestion;
      assert.ok(suggestion, name);
      assert.equal(compareChordName(suggestion, midis(notes))?.verdict, 'agrees', suggestion);
    }
  });

  it('a name that cannot be read is not compared', () => {
    assert.equal(compareChordName('Dfoo', [50]), undefined);
  });

  it('gives a frozen record', () => {
    const read = readChordName('Dm');
    assert.ok(read.ok);
    assert.ok(Object.isFrozen(compareChord(read.value, midis('D3 F#3 A3'))) && Object.isFrozen(read.value));
    assert.ok(Object.isFrozen(read.value.tones) && read.value.tones.every((tone) => Object.isFrozen(tone)));
  });
});
