import assert from 'node:assert/strict';
import { degreeInKey, keyScale, readKey, type Key, type Mode } from '../../../../src/music/key';
import { pitchClassOf } from '../../../../src/music/noteName';
import { Document } from '../../../../src/notation/document';
import { convert } from '../../../../src/service/change/convert';
import { chordInKey, degreeShift, MODE_STEPS } from '../../../../src/service/change/keyFunction';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { changeOrRefusal, onRandomChords, taken } from './work';

function key(text: string): Key {
  const read = readKey(text);
  assert.ok(read.ok);
  return read.value;
}

const MODES: readonly Mode[] = ['major', 'minor', 'dorian', 'phrygian', 'lydian', 'mixolydian', 'locrian'];

describe('the function under another key', () => {
  it('the table of modes is that of the white keys: each mode from its own note (any handbook of harmony)', () => {
    const white = [0, 2, 4, 5, 7, 9, 11];
    const order: readonly Mode[] = [
      'major',
      'dorian',
      'phrygian',
      'lydian',
      'mixolydian',
      'minor',
      'locrian',
    ];
    order.forEach((mode, at) => {
      const start = white[at] ?? 0;
      const steps = white.map((_, i) => ((white[(at + i) % 7] ?? 0) - start + 12) % 12);
      assert.deepEqual(MODE_STEPS[mode], steps, mode);
    });
  });

  it('every note of a scale becomes the note of the same number in every other key', () => {
    for (const from of MODES.map((mode) => key(`D ${mode}`)))
      for (const to of MODES.flatMap((mode) => [key(`Bb ${mode}`), key(`G ${mode}`)]))
        keyScale(from).forEach((name, degree) => {
          const midi = 60 + pitchClassOf(name);
          const goal = keyScale(to)[degree];
          assert.ok(goal);
          assert.equal((midi + degreeShift(from, to, midi)) % 12, pitchClassOf(goal) % 12);
        });
  });

  it('a note beside the scale keeps its distance from the tonic, and the nearest way is taken', () => {
    const [c, d] = [key('C'), key('D minor')];
    assert.equal(degreeShift(c, d, 63), 2); // the flat third of C is the third of D minor
    assert.equal(degreeShift(c, key('A'), 60), -3);
    assert.equal(degreeShift(c, key('F#'), 60), 6);
  });

  it('chords go with their degrees and take the triads of the new mode', () => {
    // II, IV, V and VI of major and of natural minor: ii° iv v VI in minor (any handbook of harmony).
    const [c, am] = [key('C'), key('A minor')];
    assert.deepEqual(
      ['C', 'Dm', 'F', 'G', 'Am', 'C/E', 'N.C.'].map((name) => chordInKey(name, c, am)),
      ['Am', 'Bdim', 'Dm', 'Em', 'F', 'Am/C', 'N.C.'],
    );
    assert.deepEqual(
      ['G7', 'Dm7', 'Cmaj7'].map((name) => chordInKey(name, c, key('E'))),
      ['B7', 'F#m7', 'Emaj7'],
    );
  });

  it('in the same mode every degree stays, under capos too, and nothing but the whole moves', () => {
    onRandomChords((text) => {
      const document = new Document(text);
      const [system] = document.systems;
      const from = system?.header.key;
      assert.ok(from);
      const to = from.mode === 'minor' ? 'B minor' : 'Eb';
      const change = changeOrRefusal(
        convert(
          document,
          { range: undefined, tuning: 'open D', keep: 'function', key: to },
          DEFAULT_SETTINGS,
        ),
      );
      assert.ok(change);
      if (change.report.unplaced.length > 0) return;
      const after = taken(text, change);
      assert.deepEqual(degrees(after), degrees(document), `${text}\n---\n${after.text()}`);
    });
  });

  it('asks for the key to go to, and for one to come from', () => {
    const text = 'key: C\n\nE4|0---|\n';
    const ask = convert(
      new Document(text),
      { range: undefined, tuning: 'open D', keep: 'function' },
      DEFAULT_SETTINGS,
    );
    assert.ok('error' in ask && ask.asks === 'key');
    const none = convert(
      new Document('E4|0---|\n'),
      { range: undefined, tuning: 'open D', keep: 'function', key: 'D' },
      DEFAULT_SETTINGS,
    );
    assert.ok('error' in none && none.asks === undefined && /write a key:/.test(none.error));
  });
});

/** Onset and degree of each note as played. */
function degrees(document: Document): string[] {
  return document.systems
    .flatMap(({ header, reading }) =>
      reading.notes.map(({ onset, pitches }) => {
        const capo = header.capo?.fret ?? 0;
        assert.ok(header.key);
        return `${onset.n}/${onset.d} ${degreeInKey(header.key, (pitches[0]?.midi ?? 0) - capo).text}`;
      }),
    )
    .sort();
}
