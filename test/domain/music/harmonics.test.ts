import assert from 'node:assert/strict';
import fc from 'fast-check';
import { harmonicAt, nearestNodes, writtenFret, type NaturalHarmonic } from '../../../src/music/harmonics';
import { formatNoteName, midiOf, parseNoteName } from '../../../src/music/noteName';
import { spellMidi } from '../../../src/music/spelling';

function natural(fret: number): NaturalHarmonic {
  const harmonic = harmonicAt(fret);
  assert.ok(harmonic?.kind === 'harmonic', String(fret));
  return harmonic;
}

describe('Natural harmonics: nodes of an ideal string (physics: fret = 12·log2(1/(1−k/n)), sound = 12·log2 n)', () => {
  for (const [fret, partial, node, halfSteps, cents] of [
    [12, 2, 12, 12, 0],
    [7, 3, 7.02, 19, 1.96],
    [19, 3, 19.02, 19, 1.96],
    [5, 4, 4.98, 24, 0],
    [24, 4, 24, 24, 0],
    [4, 5, 3.86, 28, -13.69],
    [9, 5, 8.84, 28, -13.69],
    [16, 5, 15.86, 28, -13.69],
    [3.9, 5, 3.86, 28, -13.69],
    [3.2, 6, 3.16, 31, 1.96],
    [2.7, 7, 2.67, 34, -31.17],
    [5.8, 7, 5.83, 34, -31.17],
    [9.7, 7, 9.69, 34, -31.17],
    [14.7, 7, 14.67, 34, -31.17],
    [21.7, 7, 21.69, 34, -31.17],
    [2.3, 8, 2.31, 36, 0],
    [8.1, 8, 8.14, 36, 0],
    [17, 8, 16.98, 36, 0],
  ] as const) {
    it(`at ${fret} the ${partial}th partial`, () => {
      const harmonic = natural(fret);
      assert.equal(harmonic.partial, partial);
      assert.ok(Math.abs(harmonic.node - node) < 0.005);
      assert.equal(Math.round(harmonic.semitones), halfSteps);
      assert.ok(Math.abs(harmonic.cents - cents) < 0.006);
      assert.ok(Math.abs(harmonic.semitones - (halfSteps + harmonic.cents / 100)) < 1e-9);
    });
  }

  it('T11: 12, 7 and 19, 5 and 24, 4, 9 and 16 on the strings of standard tuning', () => {
    const sounding = (fret: number) =>
      ['E2', 'A2', 'D3', 'G3', 'B3', 'E4']
        .map((text) => {
          const note = parseNoteName(text);
          assert.ok(note);
          const key = { tonic: { letter: 'E', alter: 0 }, mode: 'major' } as const;
          return formatNoteName(spellMidi(midiOf(note) + natural(fret).semitones, { key, tuningNames: [] }));
        })
        .join(' ');
    assert.equal(sounding(12), 'E3 A3 D4 G4 B4 E5');
    for (const fret of [7, 19]) assert.equal(sounding(fret), 'B3 E4 A4 D5 F#5 B5');
    for (const fret of [5, 24]) assert.equal(sounding(fret), 'E4 A4 D5 G5 B5 E6');
    for (const fret of [4, 9, 16]) assert.equal(sounding(fret), 'G#4 C#5 F#5 B5 D#6 G#6');
  });

  it('3 is ambiguous: 3.2 and 2.7 say which', () => {
    const harmonic = harmonicAt(3);
    assert.ok(harmonic?.kind === 'ambiguous');
    assert.deepEqual([...harmonic.choices], [3.2, 2.7]);
    assert.deepEqual(
      harmonic.choices.map((fret) => natural(fret).partial),
      [6, 7],
    );
  });

  it('where no node is near, the nearest are offered', () => {
    for (const fret of [0, 1, 6.3, 10, 11, 13, 18, 20, 23])
      assert.equal(harmonicAt(fret), undefined, String(fret));
    assert.deepEqual(
      nearestNodes(11).map(({ fret }) => fret),
      [12, 9.7, 9],
    );
    assert.deepEqual(
      nearestNodes(1, 2).map(({ fret }) => fret),
      [2.3, 2.7],
    );
    for (const bad of [NaN, Infinity, -12]) assert.equal(harmonicAt(bad), undefined);
  });

  it('what is offered means what it was offered for, and a place means the node nearest to it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 24, noNaN: true }), (fret) => {
        for (const choice of nearestNodes(fret)) {
          assert.equal(natural(choice.fret), choice.harmonic);
          assert.equal(writtenFret(choice.harmonic), choice.fret);
        }
        const harmonic = harmonicAt(fret);
        if (harmonic?.kind === 'harmonic') assert.ok(Math.abs(harmonic.node - fret) <= 0.25);
      }),
    );
  });
});
