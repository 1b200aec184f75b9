import assert from 'node:assert/strict';
import { sheetOf } from './ask';

describe('The tuning sheet: its strings', () => {
  it('each has its note, its frequency at the reference pitch, its place in the open chord', () => {
    // Frequencies: twelve-tone equal temperament, ISO 16:1975 (T1); at A4 = 432 Hz by proportion.
    const { strings, tuning, open } = sheetOf('tuning: open G\npitch: 432');
    assert.deepEqual(
      strings.map(({ number, note, role, toNext }) => [number, note, role, toNext]),
      [
        [6, 'D2', 'fifth', 5],
        [5, 'G2', 'root', 7],
        [4, 'D3', 'fifth', 5],
        [3, 'G3', 'root', 4],
        [2, 'B3', 'third', 3],
        [1, 'D4', 'fifth', null],
      ],
    );
    assert.equal(strings[3]?.pitches[0]?.frequency, Math.round(((195.9977 * 432) / 440) * 100) / 100);
    assert.equal(tuning.title, 'Open G on the guitar');
    assert.deepEqual(tuning.facts, ['A4 = 432 Hz']);
    assert.match(open.words, /^The open strings make G/);
  });

  it('both strings of a course are told, with both frequencies', () => {
    const { strings } = sheetOf('instrument: 12-string guitar');
    assert.deepEqual(
      strings[3]?.pitches.map(({ note, frequency }) => [note, frequency]),
      [
        ['G3', 196],
        ['G4', 392],
      ],
    );
  });

  it('says how to tune by ear in words, also where the next string is lower', () => {
    const words = (text: string): readonly string[] => sheetOf(text).tuneBy.map((check) => check.words);
    assert.deepEqual(words('tuning: drop D').slice(0, 2), [
      'String 6 at fret 7 gives string 5, A2',
      'String 5 at fret 5 gives string 4, D3',
    ]);
    assert.equal(words('instrument: ukulele')[0], 'String 3 at fret 7 gives open string 4, G4');
    assert.equal(words('instrument: banjo').at(-1), 'String 1 at fret 5 gives string 5, G4');
  });

  it('names the beat of two tempered strings', () => {
    const { harmonics } = sheetOf('');
    const told = harmonics.find(({ first, second }) => first.string === 6 && second.string === 5);
    // 3 · 110 Hz − 4 · 82.407 Hz = 0.37 Hz; 1.96 cents (strings-and-frets.md §2.7)
    assert.equal(told?.beats, 0.37);
    assert.equal(
      told.words,
      'The harmonics at fret 5 of string 6 and fret 7 of string 5, E4: one beat in 2.7 seconds when both are in tune; without a beat string 5 is 2.0 cents flat',
    );
  });

  it('where the open strings make no chord no string has a place in it', () => {
    const { open, strings } = sheetOf('tuning: C2 C#2 D2 D#2 E2 F2');
    assert.equal(open.chord, null);
    assert.match(open.words, /no everyday chord/);
    assert.ok(strings.every(({ role }) => role === null));
  });
});
