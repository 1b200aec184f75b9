import assert from 'node:assert/strict';
import { toNumber } from '../../../src/music/fraction';
import { Document } from '../../../src/notation/document';
import { rewriteSystem } from '../../../src/notation/print/rewriteSystem';
import type { System } from '../../../src/notation/tabDocument';

/*
 * Lines typed by hand seldom end in one column. A dash too many must not bring a bar of its own, which would move all
 * that follows by a bar. Bars and onsets counted by hand; the rule is section 4 of the notation.
 */
function systemsOf(text: string): readonly System[] {
  return new Document(text).systems;
}

function barsOf(system: System | undefined): string[] {
  return (system?.reading.bars ?? []).map((bar) => `${bar.startColumn}-${bar.endColumn} ${bar.closeSign}`);
}

describe('bar signs out of line', () => {
  const ONE_LONG = 'tuning: G3 D4 A4\n\nA|0---2---3---5---|\nD|----------------|\nG|------------------|';

  it('a line that is longer than the others brings no further bar', () => {
    const [first] = systemsOf(ONE_LONG);
    assert.ok(first);
    assert.deepEqual(barsOf(first), ['1-17 |']);
    assert.deepEqual(
      first.reading.notes.map(({ onset }) => toNumber(onset)),
      [0, 1, 2, 3],
    );
    assert.equal(toNumber(first.reading.length), 4);
    assert.deepEqual(
      first.reading.problems.map(({ kind, line }) => `${kind} ${line}`),
      ['bar-out-of-line 2'],
    );
  });

  it('where something is played behind the last bar sign, or more bars are written, they stay', () => {
    const [played] = systemsOf('tuning: G3 D4 A4\n\nA|0---|\nD|----|\nG|-------5-|');
    assert.deepEqual(barsOf(played), ['1-5 |', '6-11 ']);
    const [more] = systemsOf('tuning: G3 D4 A4\n\nA|0---|\nD|----|\nG|----|----|');
    assert.deepEqual(barsOf(more), ['1-5 |', '6-11 ']);
  });

  it('where no place of a sign has half of the lines, the place that most have is taken, else the top line’s', () => {
    const [three] = systemsOf('tuning: G3 D4 A4\n\nA|0---|2---|\nD|-----|---|\nG|------|--|');
    assert.deepEqual(barsOf(three), ['1-5 |', '6-10 |']);
    const [six] = systemsOf(
      'E|0---|2-----|\nB|----|------|\nG|-----|----|\nD|-----|----|\nA|-----|----|\nE|------|----|\n',
    );
    assert.deepEqual(barsOf(six), ['1-6 |', '7-12 |']);
  });

  it('a sign out of line is not printed beside the one that holds', () => {
    const lengths = ['A|0---2---|\nD|-------|\nG|--------|', 'A|0---2---|\nD|---------|\nG|--------|'];
    for (const lines of lengths) {
      const [system] = systemsOf(`tuning: G3 D4 A4\n\n${lines}`);
      assert.ok(system);
      const printed = rewriteSystem({
        system,
        firstBar: 0,
        lastBar: 0,
        header: system.header,
        place: (index) => ({ string: 1, fret: system.reading.notes[index]?.fret ?? 0 }),
        keepLabels: true,
        strings: [1, 2, 3],
        position: system,
      });
      assert.deepEqual(printed, ['A|0---2---|', 'D|--------|', 'G|--------|']);
    }
  });
});
