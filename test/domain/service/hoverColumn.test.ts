import assert from 'node:assert/strict';
import { hoverLines } from './cursor';

const SONG = `tuning: DADGAD
capo: 2
key: D mixolydian

[Verse]
count |1   &   2   &   3   &   4   &   |
D4    |0-----------0---2---0-----------|
A3    |----0-----------------------3---|
G3    |--------0-------------------2---|
D3    |----------------4---------------|
A2    |--------------------------------|
D2    |0-----@---------------------#---|

count |1   &   2   &   3   &   4   &   |
D4    |---%------------0h2-0-----------|
A3    |2---0---------------------------|
G3    |--------2-----------------------|
D3    |------------------------4p2-----|
A2    |0-------------------------------|
D2    |--------------------------------|
`;

/** The hover where one sign stands for the cursor; the other signs are dashes. */
function at(sign: string): readonly string[] {
  return hoverLines(SONG.replace(sign, '<|>-').replace(/[@#%]/g, '-'));
}

describe('hover of a column', () => {
  it('tells what rings where nothing is struck, sounding and as played', () => {
    assert.deepEqual(at('@'), [
      'Nothing is struck here',
      '- E4: string 1, open, ringing',
      '- B3: string 2, open, ringing',
      '- E2: string 6, open, ringing',
      'E5 (power chord, no third)',
      'Played as D5 (power chord, no third)',
      'Notes from the bass up: E B',
      'Open strings 6, 5, 4, 2 and 1 may ring',
      'Bar 1, beat 1 a · rhythm by the count row',
    ]);
  });

  it('tells the struck notes first, then all that sound, and the chord with its other names', () => {
    assert.deepEqual(at('#').slice(0, 9), [
      'Struck: B3 and D4',
      '- E4: string 1, open, ringing',
      '- D4: string 2, fret 3, struck',
      '- B3: string 3, fret 2, struck',
      '- G#3: string 4, fret 4, ringing',
      '- E2: string 6, open, ringing',
      'E7 (dominant seventh)',
      'Played as D7 (dominant seventh)',
      'Also: G#dim/E (diminished, E in the bass)',
    ]);
  });

  it('hears what rings in from the system before', () => {
    assert.deepEqual(at('%').slice(0, 7), [
      'Nothing is struck here',
      '- E4: string 1, open, ringing from the system before',
      '- C#4: string 2, fret 2, ringing',
      '- B3: string 3, fret 2, ringing from the system before',
      '- G#3: string 4, fret 4, ringing from the system before',
      '- B2: string 5, open, ringing',
      '- E2: string 6, open, ringing from the system before',
    ]);
  });

  it('spells the notes as the chord does: B major in half step down has a D#', () => {
    const text = `tuning: half step down

mark |<|>.|
1    |0|
2    |1|
3    |0|
4    |2|
5    |3|
6    |-|
`;
    assert.deepEqual(hoverLines(text).slice(0, 8), [
      'Struck: B2, D#3, F#3, B3 and D#4',
      '- D#4: string 1, open, struck',
      '- B3: string 2, fret 1, struck',
      '- F#3: string 3, open, struck',
      '- D#3: string 4, fret 2, struck',
      '- B2: string 5, fret 3, struck',
      'B (major)',
      'Notes from the bass up: B D# F#',
    ]);
  });

  it('in a re-entrant tuning the lowest note is no bass', () => {
    const text = `instrument: ukulele

mark |<|>.|
A4   |0|
E4   |1|
C4   |0|
G4   |2|
`;
    assert.equal(hoverLines(text)[5], 'F (major, fifth in the bass)');
  });

  it('knows a chord without its fifth', () => {
    const text = `mark |<|>.|
E4   |0|
B3   |-|
G3   |-|
D3   |2|
A2   |3|
E2   |-|
`;
    assert.deepEqual(hoverLines(text).slice(4, 6), ['major third', 'Also: C(no5) (without the fifth)']);
  });

  it('one note in octaves is no chord, and a power chord is told from a note', () => {
    const text = (low: string): string => `mark |<|>.|
E4   |0|
B3   |-|
G3   |-|
D3   |-|
A2   |-|
E2   |${low}|
`;
    assert.equal(hoverLines(text('0'))[3], 'The note E in octaves');
    const fret = (low: string): string | undefined =>
      hoverLines(text(low).replace('mark |<|>.|\nE4   |', 'E4   |<|>')).at(-1);
    assert.equal(fret('0'), 'Together: the note E in octaves (E2 struck, E4 struck)');
    assert.equal(fret('7'), 'Together: power chord E5/B (B2 struck, E4 struck)');
  });

  it('a bent note has risen in the next column', () => {
    const text = `E4 |-----|
B3 |-----|
G3 |7b9<|>--|
D3 |-----|
A2 |-----|
E2 |-----|
`;
    assert.equal(hoverLines(text)[1], '- E4: string 3, fret 7, ringing');
  });
});
