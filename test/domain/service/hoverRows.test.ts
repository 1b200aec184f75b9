import assert from 'node:assert/strict';
import { hoverLines } from './cursor';

const grip = (chord: string, header = ''): string => `${header}

chords |${chord}
E4     |0-------|
B3     |1-------|
G3     |0-------|
D3     |2-------|
A2     |3-------|
E2     |--------|
`;

describe('hover of a row', () => {
  it('a chord that agrees', () => {
    assert.deepEqual(hoverLines(grip('<|>C')), [
      'C is written',
      'It agrees with what sounds',
      'What sounds from here to the next name: C E G, that is C (major)',
      'Strings 6, 3 and 1 may ring (third, fifth, third); strings 5 and 4 in passing (sixth, second); mute string 2 (a half step under the root)',
      'Bar 1, beat 1',
    ]);
  });

  it('a chord that does not', () => {
    assert.deepEqual(hoverLines(grip('<|>Cm')).slice(0, 2), ['Cm is written', 'Cm is written, E sounds: C']);
    assert.deepEqual(hoverLines(grip('<|>C7')).slice(0, 2), [
      'C7 is written',
      'C7 is written, its seventh Bb does not sound: C',
    ]);
  });

  it('a melody over a chord does not contradict it', () => {
    const text = `chords |<|>C
E4     |0---1---3---0---|
B3     |1---------------|
G3     |0---------------|
D3     |2---------------|
A2     |3---------------|
E2     |----------------|
`;
    assert.deepEqual(hoverLines(text).slice(0, 2), [
      'C is written',
      'It agrees, though C also has F sounding: Cadd11',
    ]);
  });

  it('under a full capo chords are named as played', () => {
    assert.deepEqual(hoverLines(grip('<|>C', 'capo: 3')), [
      'C is written',
      'It agrees with what sounds',
      'What sounds from here to the next name: C E G, that is C (major)',
      'Named as played; the capo sounds it 3 frets higher',
      'Strings 6, 3 and 1 may ring (third, fifth, third); strings 5 and 4 in passing (sixth, second); mute string 2 (a half step under the root)',
      'Bar 1, beat 1',
    ]);
  });

  it('what is no chord is told as the reader tells it', () => {
    assert.match(hoverLines(grip('<|>Cq'))[1] ?? '', /^"q" in Cq cannot be read/);
  });

  it('a syllable of the count has its time, the row and its word say what they are', () => {
    const text = (word: string, body: string): string => `${word} |${body}|\nE2    |0---0---0---0---|\n`;
    assert.deepEqual(hoverLines(text('count', '1 & 2 <|>& 3 & 4 & ')), [
      'Bar 1, beat 2 &',
      'rhythm by the count row',
    ]);
    assert.equal(
      hoverLines(text('count', '1 & 2 & 3 & 4 & ').replace('1 & 2', '1e<|>&a2'))[0],
      'Bar 1, beat 1 &',
    );
    assert.deepEqual(hoverLines(text('co<|>unt', '1 & 2 & 3 & 4 & ')), [
      'count: Pins columns to times.',
      'Numbers are beats, & half-way, e and a the quarters about it, t and l the thirds.',
    ]);
  });

  it('a mark of the picking hand, in words, before its column', () => {
    const text = `picking |<|>p i |\nE2      |0-0-|\n`;
    assert.deepEqual(hoverLines(text).slice(0, 2), ['`p`: thumb', 'Struck: E2']);
  });
});
