import assert from 'node:assert/strict';
import { Note, Scale } from 'tonal';
import { keyScale, readKey } from '../../../src/music/key';
import { pitchClassOf } from '../../../src/music/noteName';
import { formatScale, readScale, scaleSteps } from '../../../src/music/scale';
import { SCALE_NAMES, type ScaleName } from '../../../src/music/scaleNames';

/** Against the major scale of the tonic, as handbooks of harmony print them (from memory). */
const FORMULAS: Readonly<Record<ScaleName, string>> = {
  major: '1 2 3 4 5 6 7',
  minor: '1 2 b3 4 5 b6 b7',
  dorian: '1 2 b3 4 5 6 b7',
  phrygian: '1 b2 b3 4 5 b6 b7',
  lydian: '1 2 3 #4 5 6 7',
  mixolydian: '1 2 3 4 5 6 b7',
  locrian: '1 b2 b3 4 b5 b6 b7',
  'major pentatonic': '1 2 3 5 6',
  'minor pentatonic': '1 b3 4 5 b7',
  blues: '1 b3 4 b5 5 b7',
  'major blues': '1 2 b3 3 5 6',
  'harmonic minor': '1 2 b3 4 5 b6 7',
  'melodic minor': '1 2 b3 4 5 6 7',
  'whole tone': '1 2 3 #4 #5 b7',
  chromatic: '1 b2 2 b3 3 4 b5 5 b6 6 b7 7',
};

const MAJOR = [0, 2, 4, 5, 7, 9, 11];

function stepsOf(formula: string): number[] {
  return formula.split(' ').map((degree) => {
    const sign = degree.startsWith('b') ? -1 : degree.startsWith('#') ? 1 : 0;
    return (MAJOR[Number(degree.replace(/^[b#]/, '')) - 1] ?? NaN) + sign;
  });
}

describe('scales by name', () => {
  it('have a formula each, so that none is left unchecked', () => {
    assert.deepEqual([...SCALE_NAMES].sort(), Object.keys(FORMULAS).sort());
  });

  for (const name of SCALE_NAMES)
    it(`${name} is ${FORMULAS[name]}`, () => assert.deepEqual(scaleSteps(name), stepsOf(FORMULAS[name])));

  it('agree with tonal 6.4.3 under its own names on every tonic', () => {
    for (const name of SCALE_NAMES)
      for (const tonic of ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B']) {
        const read = readScale(`${tonic} ${name}`);
        assert.ok(read.ok && read.value.tonic);
        const root = pitchClassOf(read.value.tonic);
        const theirs = Scale.get(`${tonic} ${name === 'blues' ? 'minor blues' : name}`).notes;
        assert.deepEqual(
          scaleSteps(name).map((step) => (root + step) % 12),
          theirs.map((note) => Note.chroma(note)),
          `${tonic} ${name}`,
        );
      }
  });

  it('agree with our own keys where they are modes', () => {
    for (const mode of ['major', 'minor', 'dorian', 'phrygian', 'lydian', 'mixolydian', 'locrian'] as const) {
      const key = readKey(`C ${mode}`);
      assert.ok(key.ok);
      assert.deepEqual(scaleSteps(mode), keyScale(key.value).map(pitchClassOf));
    }
  });

  for (const [text, expected] of [
    ['D dorian', 'D dorian'],
    ['d Dorian', 'D dorian'],
    ['Bb minor-pentatonic', 'Bb minor pentatonic'],
    ['b♭ minor', 'Bb minor'],
    ['F sharp harmonic  minor scale', 'F# harmonic minor'],
    ['A natural minor', 'A minor'],
    ['E aeolian mode', 'E minor'],
    ['blues', 'blues'],
    ['dorian', 'dorian'],
    ['E blues', 'E blues'],
    ['A pentatonic minor', 'A minor pentatonic'],
  ] as const)
    it(`reads ${text} as ${expected}`, () => {
      const read = readScale(text);
      assert.ok(read.ok, read.ok ? '' : read.error.message);
      assert.equal(formatScale(read.value), expected);
    });

  for (const text of ['', 'D', 'H dorian', 'D dorain', 'D## major', 'Am7', 'X minor'])
    it(`refuses “${text}” in one sentence`, () => {
      const read = readScale(text);
      assert.ok(!read.ok);
      assert.match(read.error.message, /^[A-Z“].*\.$/);
    });
});
