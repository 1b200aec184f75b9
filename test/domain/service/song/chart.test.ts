import assert from 'node:assert/strict';

import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import type { ChordChart } from '../../../../src/service/song/songAnswer';
import { assertWellFormed } from '../wellFormed';
import { fill, LEDGER, opened, service } from './song';

function chart(text: string): ChordChart {
  const answer = service.chordChart(opened(text), { range: undefined }, DEFAULT_SETTINGS);
  assert.ok(!('error' in answer), 'error' in answer ? answer.error : '');
  return answer;
}

describe('a chart of chords', () => {
  it('has the shapes that filling writes, each once, with the bars in which they begin', () => {
    const { chords } = chart(LEDGER);
    assert.deepEqual([...new Set(chords.map(({ name }) => name))], ['G', 'C', 'Em', 'D']);
    const document = opened(fill(LEDGER).text);
    for (const system of document.systems) {
      const { firstBar } = document.placeOf(system);
      const { rows, notes } = system.reading;
      for (const mark of rows.find(({ row }) => row === 'chords')?.marks ?? []) {
        const bar = firstBar + system.reading.bars.findIndex(({ endColumn }) => mark.column < endColumn);
        const struck = notes.filter(
          ({ onset, kind }) => onset.n === mark.onset.n && onset.d === mark.onset.d && kind === 'fretted',
        );
        if (mark.text === 'N.C.') continue;
        const frets = [6, 5, 4, 3, 2, 1].map(
          (string) => struck.find((note) => note.string === string)?.fret ?? null,
        );
        const told = chords.find(
          ({ name, bars, shape }) =>
            name === mark.text && bars.includes(bar) && shape?.frets.join() === frets.join(),
        );
        assert.ok(told, `${mark.text} in bar ${bar}: ${frets.join(' ')}`);
      }
    }
  });

  it('looks at names alone, also over tab', () => {
    const filled = chart(fill(LEDGER).text);
    assert.deepEqual(
      filled.chords.map(({ name, bars }) => [name, bars]),
      chart(LEDGER).chords.map(({ name, bars }) => [name, bars]),
    );
  });

  it('is told as text that lines up, with what chords sound as under a capo', () => {
    const { text } = chart('title: Tide Table\ncapo: 2\n\nchords |G       Xq      |C       |\n');
    const lines = text.trimEnd().split('\n');
    assert.deepEqual(lines.slice(0, 4), [
      'Tide Table',
      'standard, capo at fret 2',
      '',
      'chord         frets        fingers      where',
    ]);
    assert.match(lines[4] ?? '', /^G \(sounds A\) {2}3 [02x] 0 0 [03] 3 /);
    assert.match(lines[5] ?? '', /^Xq +none +bar 1 {2}A chord name begins/);
    assert.match(lines[6] ?? '', /^C \(sounds D\) {2}x 3 2 0 1 0 {2}- 3 2 - 1 - {2}bar 2$/);
  });

  it('is one well-formed sheet without scripts or links, also for 30 chords', () => {
    const roots = ['C', 'D', 'E', 'F', 'G', 'A', 'B', 'Bb', 'Eb', 'F#'];
    const names = roots.flatMap((root) => [root, `${root}m`, `${root}7`]);
    const rows = Array.from(
      { length: 10 },
      (_, i) =>
        `chords |${names
          .slice(i * 3, i * 3 + 3)
          .map((name) => name.padEnd(8))
          .join('|')}|`,
    );
    const { svg, alt, chords } = chart(`title: <All & more>\n\n${rows.join('\n\n')}\n`);
    assert.equal(new Set(chords.map(({ name }) => name)).size, 30);
    assertWellFormed(svg);
    assert.doesNotMatch(svg, /<script|<style|href|<image|<foreignObject/i);
    for (const name of names) assert.ok(svg.includes(`>${name}</text>`), name);
    assert.match(alt, /^Chord chart: C x 3 2 0 1 0; /);
    // Nothing is drawn past the sheet, and no two pictures lie over each other.
    const width = Number(/ width='(\d+)'/.exec(svg)?.[1]);
    const height = Number(/ height='(\d+)'/.exec(svg)?.[1]);
    const places = [
      ...svg.matchAll(/<svg x='([\d.]+)' y='([\d.]+)'[^>]* width='([\d.]+)' height='([\d.]+)'/g),
    ].map((found) => found.slice(1).map(Number));
    assert.equal(places.length, chords.filter(({ shape }) => shape).length);
    for (const [i, [x = 0, y = 0, w = 0, h = 0]] of places.entries()) {
      assert.ok(x + w <= width && y + h <= height, `picture ${i}`);
      for (const [x2 = 0, y2 = 0] of places.slice(i + 1))
        assert.ok(x2 >= x + w || y2 >= y + h || x2 < x, `picture ${i}`);
    }
  });

  it('tells each tuning where the fields change', () => {
    const { tunings, chords } = chart(
      'tuning: DADGAD\n\nchords |D       |\n\ntuning: open G\n\nchords |D       |\n',
    );
    assert.deepEqual(tunings, ['DADGAD', 'open G']);
    assert.deepEqual(
      chords.map(({ tuning }) => tuning),
      tunings,
    );
  });

  it('says what is missing where no name stands', () => {
    assert.ok('error' in service.chordChart(opened('E4 |0---|\n'), { range: undefined }, DEFAULT_SETTINGS));
    assert.ok(
      'error' in service.chordChart(opened('chords |N.C.    |\n'), { range: undefined }, DEFAULT_SETTINGS),
    );
  });
});
