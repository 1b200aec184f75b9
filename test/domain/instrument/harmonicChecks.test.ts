import assert from 'node:assert/strict';
import fc from 'fast-check';
import { harmonicChecks, type HarmonicCheck } from '../../../src/instrument/harmonicChecks';
import { midiOf, parseNoteName } from '../../../src/music/noteName';
import { randomTuning } from './randomTuning';
import { tuning } from './read';

/** T11: natural harmonics of standard tuning on strings 6 to 1, touched at 12, 7, 5 and 4. */
const T11: Readonly<Record<number, string>> = {
  12: 'E3 A3 D4 G4 B4 E5',
  7: 'B3 E4 A4 D5 F#5 B5',
  5: 'E4 A4 D5 G5 B5 E6',
  4: 'G#4 C#5 F#5 B5 D#6 G#6',
};

const midiOfText = (text = ''): number => {
  const note = parseNoteName(text);
  assert.ok(note, text);
  return midiOf(note);
};

const between = (checks: readonly HarmonicCheck[], first: number, second: number): HarmonicCheck => {
  const found = checks.find((one) => one.first.string === first && one.second.string === second);
  assert.ok(found, `strings ${first} and ${second}`);
  return found;
};

describe('Harmonics that should agree', () => {
  const standard = harmonicChecks(tuning('standard'), 440);

  it('strings a fourth apart: fret 5 against fret 7, 1.96 cents off a pure fourth (§2.7)', () => {
    const check = between(standard, 6, 5);
    assert.deepEqual([check.first.touched, check.second.touched], [5, 7]);
    assert.ok(Math.abs(check.cents - 1.955) < 0.001);
    // ISO 16: E2 is 82.4069 Hz, A2 110 Hz; 4 · 82.4069 = 329.628, 3 · 110 = 330.
    assert.ok(Math.abs(check.beats - 0.372) < 0.001, String(check.beats));
  });

  it('a tempered major third: fret 4 against fret 5, 13.69 cents off a pure third (§2.7)', () => {
    const check = between(harmonicChecks(tuning('open G'), 440), 3, 2);
    assert.deepEqual([check.first.touched, check.second.touched], [4, 5]);
    assert.ok(Math.abs(check.cents - 13.686) < 0.001);
    assert.ok(Math.abs(check.beats - (4 * 246.9417 - 5 * 195.9977)) < 0.002);
  });

  it('octaves agree without a beat', () => {
    const check = between(harmonicChecks(tuning('DADGAD'), 440), 6, 4);
    assert.deepEqual([check.first.touched, check.second.touched, check.cents], [12, 0, 0]);
    assert.ok(check.beats < 1e-9);
  });

  it('a third written pure has next to no beat left', () => {
    const pure = between(harmonicChecks(tuning('E2 B2 E3 G#3-13.69c B3 E4'), 440), 4, 3);
    assert.ok(Math.abs(pure.cents) < 0.01);
  });

  it('the notes are those of T11', () => {
    for (const { first, second, midi } of standard)
      for (const { string, touched } of [first, second]) {
        const names = touched === 0 ? 'E2 A2 D3 G3 B3 E4' : T11[touched];
        assert.equal(midi, midiOfText(names?.split(' ')[6 - string]), `fret ${touched} of string ${string}`);
      }
  });

  it('beats grow with the reference pitch', () => {
    const low = between(harmonicChecks(tuning('standard'), 415), 6, 5);
    assert.ok(Math.abs(low.beats / between(standard, 6, 5).beats - 415 / 440) < 1e-9);
  });

  it('laws: a string is linked once, none is circled, and what should agree is within reach', () => {
    fc.assert(
      fc.property(randomTuning, (of) => {
        const checks = harmonicChecks(of, 440);
        assert.ok(checks.length < of.strings.length);
        const groups = new Map<number, number>(of.strings.map((_, at) => [at + 1, at]));
        for (const { first, second, cents, beats } of checks) {
          const [a, b] = [groups.get(first.string), groups.get(second.string)];
          assert.notEqual(a, b, 'linked twice');
          for (const [string, group] of groups) if (group === b && a !== undefined) groups.set(string, a);
          assert.ok(Math.abs(cents) <= 17);
          assert.ok(first.partial > 1 || second.partial > 1);
          assert.ok(Math.abs(beats - Math.abs(first.frequency - second.frequency)) < 1e-9);
        }
      }),
    );
  });
});
