import assert from 'node:assert/strict';
import { refusalOf, sheetOf } from './ask';

describe('The tuning sheet: retuning', () => {
  it('tells DADGAD from standard step by step', () => {
    const { retuning } = sheetOf('tuning: DADGAD');
    assert.equal(retuning.words, 'From standard: lower strings 6, 2 and 1 by 2 half steps');
    // D2 73.42, A3 220.00 and D4 293.66 Hz: ISO 16:1975, T1
    assert.deepEqual(
      retuning.steps.map(({ words, check }) => [words, check]),
      [
        [
          'Lower string 6 by 2 half steps, from E2 to D2 (73.42 Hz)',
          'It then sounds an octave below open string 4, D3',
        ],
        [
          'Lower string 2 by 2 half steps, from B3 to A3 (220.00 Hz)',
          'It then sounds an octave above open string 5, A2',
        ],
        [
          'Lower string 1 by 2 half steps, from E4 to D4 (293.66 Hz)',
          'It then sounds an octave above open string 4, D3',
        ],
      ],
    );
    assert.match(retuning.lastCheck, /^Check every string again.*the neck has moved/);
    assert.deepEqual(retuning.cautions, []);
    assert.ok(retuning.pull.end < 1 && retuning.pull.highest === 1);
  });

  it('says what carries over to open E, in words', () => {
    const { retuning } = sheetOf('tuning: open E');
    assert.equal(
      retuning.words,
      'From standard: raise strings 5 and 4 by 2 half steps and string 3 by 1 half step',
    );
    assert.deepEqual(retuning.carriesOver.words, [
      'Strings 6, 2 and 1 are as they were',
      'String 5 now has the note names of string 2; string 4 those of strings 6 and 1',
      'Only string 3 is new',
      'Strings 5 and 4 went up 2 half steps together: among them every shape stays, and each note lies 2 frets lower',
    ]);
  });

  it('a whole set moved alike keeps every shape', () =>
    assert.deepEqual(sheetOf('tuning: half step down').retuning.carriesOver.words, [
      'Every string went down 1 half step: all your shapes and scales stay, and sound that much lower',
    ]));

  it('cautions where a string goes up: in full above the usual tuning, shortly on the way back to it', () => {
    const up = sheetOf('tuning: open E').retuning.cautions.join(' ');
    assert.match(up, /slowly.*eyes.*string maker.*luthier/s);
    const back = sheetOf('', { from: 'DADGAD' }).retuning.cautions;
    assert.equal(back.length, 1);
    assert.match(back[0] ?? '', /^Strings go up by up to 2 half steps.*slowly.*eyes and face/);
    assert.match(
      sheetOf('tuning: high strung').retuning.cautions.join(' '),
      /its maker gives for this pitch/,
    );
  });

  it('the set of .010 to .046 pulls 103.5 pounds in standard (published, strings-and-frets.md §2.5)', () => {
    const { pull } = sheetOf('tuning: DADGAD\nscale length: 25.5 in').retuning;
    const pounds = (pull.newtons?.start ?? 0) / 4.4482216;
    assert.ok(Math.abs(pounds - 103.5) < 0.15, String(pounds));
  });

  it('where the set is not known, shares are told and no newtons', () => {
    const { pull } = sheetOf('instrument: ukulele\ntuning: D6').retuning;
    assert.equal(pull.newtons, null);
    assert.match(pull.words, /12\d? % more|2\d % more/);
  });

  it('comes from the tuning that was asked for, else the piece’s earlier one, else the usual one', () => {
    const from = (text: string, asked?: string): readonly [string, string] => {
      const { from: came } = sheetOf(text, asked === undefined ? {} : { from: asked }).retuning;
      return [came.value, came.why];
    };
    const piece = 'tuning: drop D\n\nD3 |0-|\n\ntuning: DADGAD';
    assert.deepEqual(from(piece), ['drop D', 'earlier']);
    assert.deepEqual(from(piece, 'open G'), ['open G', 'asked']);
    assert.deepEqual(from('tuning: DADGAD'), ['standard', 'usual']);
    // Another player's tuning is none of this part's.
    assert.deepEqual(from('part: high\ntuning: open G\n\nD4 |0-|\n\npart: low\ntuning: drop D'), [
      'standard',
      'usual',
    ]);
    assert.deepEqual(from('tuning: drop D\n\nD3 |0-|\n\npart: high\ntuning: open G'), ['drop D', 'earlier']);
    // What stands below is not earlier.
    assert.deepEqual(from('tuning: DADGAD'), ['standard', 'usual']);
    assert.deepEqual(from('instrument: bass\n\nE1 |0-|\n\ninstrument: guitar\ntuning: open D'), [
      'standard',
      'usual',
    ]);
  });

  it('says so where both are the same', () => {
    const { retuning } = sheetOf('');
    assert.ok(retuning.same);
    assert.equal(
      retuning.words,
      'This is the usual tuning of the guitar already, so there is nothing to turn',
    );
    assert.deepEqual([retuning.steps, retuning.lastCheck, retuning.carriesOver.words], [[], '', []]);
  });

  it('a tuning to come from that cannot be read is told in a sentence with what may be meant', () =>
    assert.match(refusalOf('', { from: 'opne G' }), /“opne G” is no tuning.*Did you mean open G/));
});
