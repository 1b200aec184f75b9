import assert from 'node:assert/strict';
import { hoverLines, openAt, service, settings } from './cursor';

/** A system in the standard six strings with one line of its own. */
function onString(header: string, number: number, run: string): string {
  const lines = Array.from({ length: 6 }, (_, i) => `${i + 1} |${i + 1 === number ? run : '--------'}|`);
  return `${header}\n\n${lines.join('\n')}\n`;
}

describe('hover of a fret', () => {
  it('begins with its note, then where it is, what it is and when', () => {
    const text = `tuning: standard
key: D

count |1 & 2 & 3 & 4 & |
E4    |0---2---0-------|
B3    |----------<|>3-----|
G3    |2---------------|
D3    |0---------------|
A2    |----------------|
E2    |----------------|
`;
    assert.deepEqual(hoverLines(text), [
      'D4 · string 2, fret 3',
      '293.7 Hz, minor third above the open string',
      'Root (1) in D major',
      'Counted from the nut',
      'Bar 1, beat 3 & · rhythm by the count row',
      'Together: Dsus2 (D3 ringing, A3 ringing, D4 struck, E4 ringing)',
      'Grip: Index at fret 2 on string 3; middle at fret 3 on string 2. Open: strings 1 and 4. Held from before: string 3. Frets 2 to 3 span 32 mm.',
      "The fingers of least effort under the hand's table, for these notes alone",
    ]);
  });

  it('covers the note with its signs', () => {
    const { document, place } = openAt(onString('', 3, '--(5<|>)---'));
    assert.deepEqual(service.hover(document, place, settings)?.range, {
      start: { line: 4, character: 5 },
      end: { line: 4, character: 8 },
    });
  });

  it('T12: capo 4, string 6, fret 3 sounds B2 (MIDI 47), and is played as G2', () => {
    assert.deepEqual(hoverLines(onString('capo: 4\nkey: G', 6, '<|>3-------')).slice(0, 5), [
      'B2 · string 6, fret 3',
      'As played: G2',
      '123.5 Hz, minor third above the open string',
      'Root (1) in B major, played as G major',
      'Counted from the capo at fret 4',
    ]);
  });

  it('a partial capo: the covered string counts from the nut', () => {
    assert.deepEqual(hoverLines(onString('capo: 2 on 5 4 3', 4, '<|>0-------')).slice(0, 3), [
      'E3 · string 4, open',
      '164.8 Hz, the open string',
      'Under the partial capo at fret 2: 0 is the capo, other numbers count from the nut',
    ]);
    assert.equal(
      hoverLines(onString('capo: 2 on 5 4 3', 1, '<|>3-------'))[2],
      'Counted from the nut; the partial capo leaves this string free',
    );
  });

  // T13: computed from the rule of the trade, from memory.
  it('T13: banjo, fifth string, fret 7 counted from the nut is A4', () => {
    const text = `instrument: banjo

1 |-|
2 |-|
3 |-|
4 |-|
5 |<|>7|
`;
    assert.deepEqual(hoverLines(text).slice(0, 3), [
      'A4 · string 5, fret 7',
      '440.0 Hz, major second above the open string',
      '0 is the open string, which begins up the neck; other numbers count from the nut',
    ]);
  });

  it('the reference pitch moves the frequency', () => {
    assert.equal(
      hoverLines(onString('pitch: A4 = 442 Hz', 1, '<|>5-------'))[1],
      '442.0 Hz at A4 = 442 Hz, perfect fourth above the open string',
    );
  });

  it('spells by the key, else by the tuning', () => {
    const names = ['key: E', 'key: Ab', 'tuning: half step down'].map(
      (header) => hoverLines(onString(header, 3, '<|>1-------'))[0],
    );
    assert.deepEqual(names, ['G#3 · string 3, fret 1', 'Ab3 · string 3, fret 1', 'G3 · string 3, fret 1']);
    assert.equal(hoverLines(onString('tuning: half step down', 3, '<|>0-------'))[0], 'Gb3 · string 3, open');
  });

  it('both pitches of a course', () => {
    const text = onString('instrument: 12-string guitar', 6, '<|>3-------');
    assert.deepEqual(hoverLines(text).slice(0, 2), [
      'G2 and G3 · string 6, fret 3',
      '98.0 Hz and 196.0 Hz, minor third above the open string',
    ]);
  });

  // T11: a harmonics list of the trade, its pitches computed from the partials.
  for (const [touched, notes] of [
    ['12', ['E3', 'A3', 'D4', 'G4', 'B4', 'E5']],
    ['7', ['B3', 'E4', 'A4', 'D5', 'F#5', 'B5']],
    ['19', ['B3', 'E4', 'A4', 'D5', 'F#5', 'B5']],
    ['5', ['E4', 'A4', 'D5', 'G5', 'B5', 'E6']],
  ] as const) {
    it(`T11: natural harmonics at ${touched} of standard tuning`, () => {
      const found = [6, 5, 4, 3, 2, 1].map(
        (string) => hoverLines(onString('key: E', string, `<|><${touched}>-----`))[0],
      );
      assert.deepEqual(
        found.map((line) => line?.replace(/(?: \d.*)? ·.*/, '')),
        notes,
      );
    });
  }

  it('T11: the fifth partial is 13.7 cents flat', () => {
    assert.deepEqual(hoverLines(onString('key: E', 6, '<|><4>-----')), [
      'G#4 13.7 cents flat · string 6, natural harmonic at 4',
      '412.0 Hz, two octaves and a major third above the open string',
      'Third (3) in E major',
      'Fifth partial of the open string: 5 times its frequency',
      'Counted from the nut',
      'Bar 1, beat 1 · rhythm inferred from the columns',
    ]);
  });

  it('targets of bends, slides and what brings a note', () => {
    const told = (run: string): readonly string[] =>
      hoverLines(onString('key: D', 2, run)).filter((line) =>
        /bend|bent|slid|ham|pull|tap|trill|rel/i.test(line),
      );
    assert.deepEqual(told('<|>7b9-r7--'), [
      'Bends up a whole step to G#4 (fret 9)',
      'Released to F#4 (fret 7)',
    ]);
    assert.deepEqual(told('<|>7b1/4---'), ['Bends up a quarter step to G4 50 cents flat']);
    assert.deepEqual(told('<|>7pb9----'), ['Bent up a whole step before it sounds, to G#4 (fret 9)']);
    assert.deepEqual(told('<|>5/7-----'), ['Slides to F#4']);
    assert.deepEqual(told('5/<|>7-----'), ['Slid into from E4 (fret 5)']);
  });

  it('a muted stroke has no pitch', () => {
    assert.deepEqual(hoverLines(onString('', 3, '<|>x-------')), [
      'x · string 3, muted',
      'A muted stroke, without pitch',
      'Bar 1, beat 1 · rhythm inferred from the columns',
    ]);
  });

  it('a fret past the neck says how far the neck goes', () => {
    assert.deepEqual(hoverLines(onString('', 3, '<|>35------')).slice(0, 2), [
      'No pitch · string 3, fret 35',
      'Past the neck: it has 22 frets, this string can be played up to 22',
    ]);
  });
});
