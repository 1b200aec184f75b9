import assert from 'node:assert/strict';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { readKey } from '../../../../src/music/key';
import { parsePitchName, pitchClassOf } from '../../../../src/music/noteName';
import { spellingTable } from '../../../../src/music/spelling';
import { overChord, ringInKey, ringOver, type Ring } from '../../../../src/service/ringing/ringRules';

function ring(note: string, chord: string, key?: string): Ring {
  const name = parsePitchName(note);
  const read = readChordName(chord);
  const scale = key === undefined ? undefined : readKey(key);
  assert.ok(name && read.ok && scale?.ok !== false);
  const over = overChord(read.value, scale?.value);
  assert.ok(over);
  return ringOver(name, over);
}

/** The notes of C major that are to be muted over a chord. */
function muted(chord: string): string[] {
  return ['C', 'D', 'E', 'F', 'G', 'A', 'B'].filter((note) => ring(note, chord, 'C').verdict === 'mute');
}

describe('which strings may ring: the rule', () => {
  // Avoid notes of the modes of C major, D. Haerle, The Jazz Language (1980), as tabled in an encyclopedia's article
  // “Avoid note”. His one exception, the sixth over the dorian chord, is no half step against a tone and passes here.
  const AVOID: readonly (readonly [string, readonly string[]])[] = [
    ['Cmaj7', ['F']],
    ['Dm7', []],
    ['Em7', ['C', 'F']],
    ['Fmaj7', []],
    ['G7', ['C']],
    ['Am7', ['F']],
    ['Bm7b5', ['C']],
  ];
  for (const [chord, notes] of AVOID)
    it(`over ${chord} the avoid notes of C major are muted: ${notes.join(' ') || 'none'}`, () => {
      // The theory of avoid notes speaks of what stands above a tone; under the root is a row of its own.
      const above = muted(chord).filter((note) => !/under/.test(ring(note, chord, 'C').reason));
      assert.deepEqual(above, notes);
    });

  it('tones of the chord are free, by their names', () => {
    const roles = (chord: string, ...notes: string[]): string[] =>
      notes.map((note) => ring(note, chord).reason);
    assert.deepEqual(roles('Am7', 'A', 'C', 'E', 'G'), ['root', 'third', 'fifth', 'seventh']);
    assert.deepEqual(roles('F#m7b5', 'C'), ['flat fifth']);
    assert.deepEqual(roles('C7#9', 'D#'), ['sharp ninth']);
    assert.deepEqual(roles('Dsus4', 'G'), ['fourth']);
    assert.deepEqual(roles('C/D', 'D'), ['bass']);
    for (const note of ['A', 'C', 'E', 'G']) assert.equal(ring(note, 'Am7').verdict, 'free');
  });

  it('each further row of the table', () => {
    const rows: readonly (readonly [string, string, string | undefined, Ring['verdict'], string])[] = [
      ['F#', 'D', 'C', 'passing', 'third only while this chord lasts'],
      ['Bb', 'C', 'C', 'mute', 'outside the key'],
      ['F', 'Em', 'C', 'mute', 'a half step above the root'],
      ['C', 'G/B', 'G', 'mute', 'a half step above the bass'],
      ['B', 'C', 'C', 'mute', 'a half step under the root'],
      ['F', 'C', 'C', 'mute', 'a half step above the third'],
      ['C', 'Em', 'G', 'mute', 'a half step above the fifth'],
      ['B', 'Am', 'C', 'passing', 'second a half step under the third'],
      ['B', 'F', 'C', 'passing', 'sharp fourth a half step under the fifth'],
      ['D', 'C', 'C', 'passing', 'second'],
      ['Bb', 'C', undefined, 'passing', 'flat seventh'],
    ];
    for (const [note, chord, key, verdict, reason] of rows) {
      const told = ring(note, chord, key);
      assert.deepEqual([told.verdict, told.reason], [verdict, reason], `${note} over ${chord}`);
    }
  });

  it('a power chord has no third for the fourth to lie above', () => {
    assert.equal(ring('G', 'D5', 'D').verdict, 'passing');
    assert.equal(ring('G', 'D', 'D').verdict, 'mute');
  });

  it('N.C. has nothing to say', () => {
    const read = readChordName('N.C.');
    assert.ok(read.ok);
    assert.equal(overChord(read.value, undefined), undefined);
  });

  it('in a key the tonic chord is free, the rest of the scale passes, and five notes are outside', () => {
    for (const text of ['C', 'E minor', 'D mixolydian', 'F# dorian', 'Bb']) {
      const key = readKey(text);
      assert.ok(key.ok);
      const { value } = key;
      const rings = spellingTable({ key: value, tuningNames: [] }).map((name) => ringInKey(name, value));
      const count = (verdict: string): number => rings.filter((one) => one.verdict === verdict).length;
      assert.deepEqual([count('free'), count('passing'), count('mute')], [3, 4, 5], text);
      assert.equal(rings[pitchClassOf(value.tonic)]?.role, 'root');
    }
  });
});
