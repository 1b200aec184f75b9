import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Interval, Note, Scale } from 'tonal';
import { centsBetween, frequencyOf } from '../../../src/music/frequency';
import { intervalWords } from '../../../src/music/interval';
import { fifthsOf, nameAtFifths, pitchClassAtFifths, simplify } from '../../../src/music/lineOfFifths';
import { formatPitchName, midiOf, parseNoteName, pitchClassOf } from '../../../src/music/noteName';
import { readReferencePitch } from '../../../src/music/referencePitch';
import { DEFAULT_TEMPO, readTempo } from '../../../src/music/tempo';
import { intervalHalfSteps, midiOfText, scaleNotes } from '../../../src/music/tonalAdapter';

describe('T1: frequencies in equal temperament (OEIS A320304; A4 = 440 Hz by ISO 16:1975)', () => {
  for (const [note, hertz] of [
    ['B0', 30.87],
    ['E1', 41.2],
    ['A1', 55],
    ['D2', 73.42],
    ['E2', 82.41],
    ['A2', 110],
    ['D3', 146.83],
    ['G3', 196],
    ['B3', 246.94],
    ['C4', 261.63],
    ['E4', 329.63],
    ['G4', 392],
    ['A4', 440],
    ['E5', 659.26],
  ] as const) {
    it(`${note} is ${hertz} Hz`, () => {
      const parsed = parseNoteName(note);
      assert.ok(parsed);
      assert.ok(Math.abs(frequencyOf(midiOf(parsed)) - hertz) < 0.005);
      assert.ok(Math.abs(frequencyOf(midiOf(parsed)) - (Note.freq(note) ?? 0)) < 1e-9);
    });
  }

  it('MIDI 0 is 8.1758 Hz and MIDI 12 is 16.3516 Hz', () => {
    assert.ok(Math.abs(frequencyOf(0) - 8.1758) < 0.00005);
    assert.ok(Math.abs(frequencyOf(12) - 16.3516) < 0.00005);
  });

  it('decimals are cents, and A4 is where it is put', () => {
    assert.ok(Math.abs(centsBetween(frequencyOf(56), frequencyOf(55.86)) + 14) < 1e-9);
    assert.equal(frequencyOf(69, 432), 432);
    // Just intervals against equal temperament, by arithmetic.
    assert.ok(Math.abs(centsBetween(4, 5) - 400 + 13.69) < 0.005);
    assert.ok(Math.abs(centsBetween(2, 3) - 700 - 1.96) < 0.005);
    assert.ok(Math.abs(centsBetween(4, 7) - 1000 + 31.17) < 0.005);
  });
});

describe('T17: words for intervals (common practice, no source)', () => {
  for (const [halfSteps, words] of [
    [0, 'unison'],
    [1, 'minor second'],
    [3, 'minor third'],
    [4, 'major third'],
    [6, 'tritone'],
    [7, 'perfect fifth'],
    [-5, 'perfect fourth'],
    [12, 'octave'],
    [16, 'major tenth'],
    [18, 'octave and a tritone'],
    [19, 'perfect twelfth'],
    [24, 'two octaves'],
    [28, 'two octaves and a major third'],
    [36, 'three octaves'],
    [73, 'six octaves and a minor second'],
  ] as const) {
    it(`${halfSteps} is a ${words}`, () => assert.equal(intervalWords(halfSteps), words));
  }
});

describe('The line of fifths', () => {
  it('has the pitch classes of tonal 6.4.3 from Fbb to B##', () => {
    for (let fifths = -15; fifths <= 19; fifths++) {
      const name = nameAtFifths(fifths);
      assert.equal(fifthsOf(name), fifths);
      assert.equal(pitchClassAtFifths(fifths), pitchClassOf(name));
      assert.equal(Note.chroma(formatPitchName(name)), pitchClassOf(name));
    }
  });

  it('writes double accidentals simply, and nothing else', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20, max: 24 }), (fifths) => {
        const name = nameAtFifths(fifths);
        const simple = simplify(name);
        assert.equal(pitchClassOf(simple), pitchClassOf(name));
        assert.ok(Math.abs(simple.alter) <= 1);
        if (Math.abs(name.alter) < 2) assert.equal(simple, name);
      }),
    );
    assert.equal(formatPitchName(simplify({ letter: 'B', alter: -2 })), 'A');
    assert.equal(formatPitchName(simplify({ letter: 'F', alter: 2 })), 'G');
  });
});

describe('Reading a tempo', () => {
  for (const [text, quarters] of [
    ['96', 96],
    [' 96 bpm ', 96],
    ['96.5', 96.5],
    ['dotted quarter = 60', 90],
    ['quarter = 96', 96],
    ['Quarter=96', 96],
    ['half = 40', 80],
    ['dotted half = 40', 120],
    ['eighth = 120', 60],
    ['eighth note = 120', 60],
    ['1', 1],
    ['999', 999],
  ] as const) {
    it(`"${text}" is ${quarters} quarter notes a minute`, () => {
      const read = readTempo(text);
      assert.ok(read.ok);
      assert.deepEqual(read.value, { quartersPerMinute: quarters, text: text.trim() });
    });
  }

  for (const [text, kind, start, end] of [
    ['', 'tempo', 0, 0],
    ['fast', 'tempo', 0, 4],
    ['-5', 'tempo', 0, 2],
    ['0', 'tempo-range', 0, 1],
    ['1000', 'tempo-range', 0, 4],
    ['half = 500', 'tempo-range', 0, 10],
    [' foo = 60', 'tempo-note', 1, 4],
    ['dotted foo = 60', 'tempo-note', 7, 10],
  ] as const) {
    it(`"${text}" is told`, () => {
      const read = readTempo(text);
      assert.ok(!read.ok);
      assert.deepEqual([read.error.kind, read.error.start, read.error.end], [kind, start, end]);
    });
  }

  it('is 100 where none is written', () => assert.equal(DEFAULT_TEMPO.quartersPerMinute, 100));
});

describe('Reading a reference pitch', () => {
  for (const [text, hertz] of [
    ['A4 = 442 Hz', 442],
    ['442', 442],
    ['442 Hz', 442],
    ['A=432', 432],
    ['a4=415.3hz', 415.3],
    ['380', 380],
    ['500', 500],
  ] as const) {
    it(`"${text}" is ${hertz} Hz`, () => {
      const read = readReferencePitch(text);
      assert.ok(read.ok);
      assert.equal(read.value, hertz);
    });
  }

  for (const [text, kind] of [
    ['379', 'reference-pitch-range'],
    ['4400', 'reference-pitch-range'],
    ['A3 = 220', 'reference-pitch'],
    ['', 'reference-pitch'],
    ['high', 'reference-pitch'],
  ] as const) {
    it(`"${text}" is told`, () => {
      const read = readReferencePitch(text);
      assert.ok(!read.ok);
      assert.equal(read.error.kind, kind);
    });
  }
});

describe('tonal loads through its adapter and answers (load test of tonal 6.4.3)', () => {
  it('scales, intervals and notes', () => {
    const scale = scaleNotes({ letter: 'A', alter: 0 }, 'minor pentatonic');
    assert.ok(scale.ok);
    assert.equal(scale.value.map(formatPitchName).join(' '), 'A C D E G');
    assert.deepEqual(intervalHalfSteps('5P'), { ok: true, value: 7, notices: [] });
    assert.deepEqual(midiOfText('G#3'), { ok: true, value: 56, notices: [] });
  });

  it('T17: P5 7, M3 4, m3 3, tritone 6', () => {
    for (const [text, halfSteps] of [
      ['5P', 7],
      ['3M', 4],
      ['3m', 3],
      ['4A', 6],
      ['5d', 6],
    ] as const) {
      const read = intervalHalfSteps(text);
      assert.ok(read.ok);
      assert.equal(read.value, halfSteps);
    }
  });

  it('turns its empty answers into errors', () => {
    assert.equal(Scale.get('A foo').empty, true);
    assert.ok(!Number.isFinite(Interval.semitones('foo')));
    for (const read of [
      scaleNotes({ letter: 'A', alter: 0 }, 'foo'),
      intervalHalfSteps('foo'),
      midiOfText('foo'),
      scaleNotes({ letter: 'A', alter: 0 }, ''),
    ]) {
      assert.ok(!read.ok);
      assert.ok(read.error.message.endsWith('.'));
    }
  });
});
