import assert from 'node:assert/strict';
import { Document } from '../../../../src/notation/document';
import { passages } from '../../../../src/service/change/passages';
import { slicesIn } from '../../../../src/service/change/slices';
import type { Passage } from '../../../../src/service/serviceApi';
import { marked } from './examples';

const system = (bars: string[]): string =>
  ['E4', 'B3', 'G3', 'D3', 'A2', 'E2']
    .map((label, i) => `${label}|${bars.map((bar) => (i === 0 ? bar : '----')).join('|')}|`)
    .join('\n');

function at(text: string): { document: Document; found: readonly Passage[] } {
  const { text: plain, range } = marked(text);
  assert.ok(range);
  const document = new Document(plain);
  return { document, found: passages(document, range) };
}

const titles = (text: string): string[] => at(text).found.map(({ kind, title }) => `${kind}: ${title}`);

/** Bars of each system, as `system:first-last`. */
function barsOf(document: Document, range: Passage['range'] | undefined): string[] {
  return slicesIn(document, range).map(({ index, firstBar, lastBar }) => `${index}:${firstBar}-${lastBar}`);
}

const ONE = system(['0---', '1---', '2---', '3---']);
const TWO = system(['5---', '7---']);

describe('passages on offer', () => {
  it('at a cursor: its bar, its section, the file', () => {
    assert.deepEqual(titles(`[Verse]\n${ONE.replace('1-', '1‹›-')}\n\n[Chorus]\n${TWO}`), [
      'selection: Verse, bar 2',
      'section: Verse',
      'file: The whole file',
    ]);
  });

  it('inside one system: the bars that the selection touches, whichever way it was drawn', () => {
    assert.deepEqual(titles(ONE.replace('1---|2', '1-‹--|2›'))[0], 'selection: Bars 2–3');
    // A selection from the second bar of the first line to the third bar of the last means these bars.
    const lines = ONE.split('\n');
    const [first = '', last = ''] = [lines[0], lines[5]];
    const drawn = [
      first.slice(0, 10) + '‹' + first.slice(10),
      ...lines.slice(1, 5),
      last.slice(0, 15) + '›' + last.slice(15),
    ];
    assert.equal(titles(drawn.join('\n'))[0], 'selection: Bars 2–3');
  });

  it('a selection that ends right behind a bar line ends with the bar before it', () => {
    assert.equal(titles(ONE.replace('1---|', '‹1---|›'))[0], 'selection: Bar 2');
  });

  it('over two systems: the first from its start on, the last up to its end', () => {
    const text = `${ONE.replace('2---', '‹2---')}\n\n${TWO.replace('7---', '›7---')}`;
    const { document, found } = at(text);
    assert.equal(found[0]?.title, 'Bars 3–5');
    assert.deepEqual(barsOf(document, found[0].range), ['0:2-3', '1:0-0']);
  });

  it('of several parts: the part’s share of the section, and the part where it stands in one piece', () => {
    const text = `[Verse]\npart: low\n\n${ONE.replace('0-', '‹›0-')}\n\npart: high\n\n${TWO}\n`;
    assert.deepEqual(titles(text), [
      'selection: Verse, low, bar 1',
      'section: Verse, low',
      'section: Verse',
      'part: Part low',
      'file: The whole file',
    ]);
  });

  it('a part that stands between another’s is not offered: its range would hold both', () => {
    const text = `part: low\n\n${ONE.replace('0-', '‹›0-')}\n\npart: high\n\n${TWO}\n\npart: low\n\n${TWO}\n`;
    assert.deepEqual(titles(text), ['selection: Low, bar 1', 'file: The whole file']);
  });

  it('a selection over two parts names the bars of each', () => {
    const text = `part: low\n\n${ONE.replace('3---', '‹3---')}\n\npart: high\n\n${TWO.replace('7---', '7-›--')}\n`;
    assert.equal(titles(text)[0], 'selection: Low, bar 4; high, bars 1–2');
  });

  it('none where there is no tab; the nearest below where the cursor stands in words', () => {
    assert.deepEqual(titles('Only ‹›words.'), []);
    assert.deepEqual(titles(`‹›Words.\n\n[Verse]\n${ONE}`), ['section: Verse', 'file: The whole file']);
  });

  it('the range that is given means the same bars when it comes back', () => {
    const text = `title: Low\n\n[Verse]\n${ONE}\n\n${TWO}\n\n[Chorus]\npart: two\n\n${TWO}\n\n${ONE}\n`;
    const document = new Document(text);
    for (let line = 0; line < document.lineCount; line++) {
      for (let character = 0; character <= document.line(line).text.length; character += 3) {
        const place = { line, character };
        for (const end of [place, { line: line + 3, character: 9 }, { line: line + 12, character: 4 }]) {
          const selection = { start: place, end };
          const [first] = passages(document, selection);
          if (first?.kind !== 'selection') continue;
          const bars = barsOf(document, selection);
          assert.deepEqual(barsOf(document, first.range), bars, JSON.stringify(selection));
        }
      }
    }
  });
});
