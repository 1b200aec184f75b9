import assert from 'node:assert/strict';
import { service, settings } from './cursor';

const lenses = (text: string): readonly (readonly [number, string])[] =>
  service.sectionLens(service.open(text, settings)).map(({ line, text: told }) => [line, told]);

describe('the line above a section', () => {
  // Frets 1 and 4 on 648 mm lie 648 × (2^(−1/12) − 2^(−4/12)) = 97.3 mm apart (equal temperament).
  it('sums it up: bars, tuning, key, lowest and highest note, widest stretch', () =>
    assert.deepEqual(
      lenses(
        'tuning: DADGAD\nkey: D\n\n[Verse]\nD4 |0---|4---|\nA3 |----|1---|\nG3 |----|----|\nD3 |----|----|\nA2 |----|----|\nD2 |0---|----|\n',
      ),
      [[3, '2 bars · DADGAD · D major · D2–F#4 · widest stretch 97 mm in bar 2']],
    ));

  it('leaves out what is not said or played', () =>
    assert.deepEqual(lenses('[Rest]\nE4 |----|\nB3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nE2 |----|\n'), [
      [0, '1 bar · standard'],
    ]));

  it('stands above the first system where there is no heading, and tells each part', () =>
    assert.deepEqual(
      lenses('part: low\n\n1 |0---|\n2 |----|\n\npart: high\n\n1 |5---|\n2 |----|\n').map(([line, text]) => [
        line,
        text,
      ]),
      [[2, 'low: 1 bar · standard · E4–E4 | high: 1 bar · standard · A4–A4']],
    ));

  it('is not there without tab', () => assert.deepEqual(lenses('[Verse]\nOnly words.\n'), []));
});
