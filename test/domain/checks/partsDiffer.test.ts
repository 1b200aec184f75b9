import assert from 'node:assert/strict';
import fc from 'fast-check';
import { checkDocument } from '../../../src/checks/checkDocument';
import { partsDiffer } from '../../../src/checks/parts-differ';
import { Document } from '../../../src/notation/document';
import { demoSongs } from '../support/lines';
import { randomPiece } from '../support/randomPiece';
import { SETTINGS } from './marked';

const told = (document: Document): readonly string[] =>
  checkDocument(document, SETTINGS)
    .filter(({ code }) => code === partsDiffer.code)
    .map(({ range, message }) => `${range.start.line + 1}: ${message}`);

const of = (text: string): readonly string[] => told(new Document(text));

describe('parts that go together', () => {
  it('says where, how many and in which part', () => {
    assert.deepEqual(of('part: lead\n[Verse]\nE|0---|2---|\n\npart: second\n[Verse]\nE|3---|\n'), [
      '7: Part “second” has 1 bar in [Verse], and part “lead” (line 3) has 2 bars, so the two come apart. Write the missing bar, or take out what is too much.',
    ]);
    assert.deepEqual(of('part: lead\nE|0---|2---|\n\npart: second\nmeter: 3/4\nE|3---|5---|\n'), [
      '6: Part “second” is in 3/4 from bar 1, and part “lead” (line 2) in 4/4, so the two come apart. Write the same meter in both.',
    ]);
    assert.deepEqual(of('part: lead\nE|0---|2---|\n\npart: second\nE|:3---:|5---|\n'), [
      '5: Part “second” plays bar 1 twice, and part “lead” (line 2) every bar once, so the two come apart. Write the same repeats in both.',
    ]);
  });

  it('compares each later part with the first that shares the section, and each section by itself', () => {
    const text = [
      'part: one\n[Verse]\nE|0---|\n\n[Chorus]\nE|0---|2---|\n',
      'part: two\n[Chorus]\nE|0---|2---|\n',
      'part: three\n[Verse]\nE|0---|2---|\n\n[Chorus]\nE|0---|\n',
    ].join('\n');
    assert.deepEqual(
      of(text).map((message) => message.replace(/, so.*/, '')),
      [
        '14: Part “three” has 2 bars in [Verse], and part “one” (line 3) has 1 bar',
        '17: Part “three” has 1 bar in [Chorus], and part “one” (line 6) has 2 bars',
      ],
    );
  });

  it('the second verse of one goes with the second verse of the other', () => {
    const verses = (first: string, second: string): string => `[Verse]\n${first}\n\n[Verse]\n${second}\n`;
    const [short, long] = ['E|0---|', 'E|0---|2---|'];
    assert.deepEqual(of(`part: a\n${verses(short, long)}\npart: b\n${verses(short, long)}`), []);
    assert.equal(of(`part: a\n${verses(short, long)}\npart: b\n${verses(long, short)}`).length, 2);
  });

  it('a part written below another one is not taken to mean the heading that it happens to stand under', () => {
    const own = 'E|0---|\n\n[Verse]\nE|0---|2---|\n';
    assert.deepEqual(of(`part: a\n${own}\npart: b\n${own}`), []);
    assert.deepEqual(of(`part: a\n[Verse]\nE|0---|\n\n[Chorus]\nE|0---|\n\npart: b\nE|0---|2---|\n`), []);
    assert.equal(of(`part: a\n${own}\npart: b\n${own}\nE|0---|\n`).length, 1);
    assert.equal(of('[Verse]\npart: a\nE|0---|\n\npart: b\nE|0---|2---|\n').length, 1);
  });

  it('is quiet in the demo songs', () => {
    for (const song of demoSongs()) assert.deepEqual(of(song), []);
  });

  it('is quiet where a part is written twice, whatever it is', () => {
    fc.assert(
      fc.property(randomPiece(), (piece) => {
        const fields = piece.slice(0, piece.indexOf('\n\n'));
        const music = piece.slice(piece.indexOf('\n\n'));
        assert.deepEqual(of(`${fields}\n\npart: one${music}\n\npart: two${music}`), []);
      }),
      { numRuns: 60 },
    );
  });

  it('hears a bar come and go without reading the whole file anew', () => {
    const bars = (count: number): string => `E2 |${'0---|'.repeat(count)}`;
    const document = new Document(`part: one\n${bars(2)}\n\n${bars(3)}\n\npart: two\n${bars(5)}\n`);
    assert.deepEqual(told(document), []);
    const line = { start: { line: 3, character: 0 }, end: { line: 3, character: 99 } };
    document.edit([{ range: line, newText: bars(4) }]);
    assert.match(told(document)[0] ?? '', /^7: Part “two” has 5 bars, and part “one” \(line 2\) has 6 bars/);
    document.edit([{ range: line, newText: bars(3) }]);
    assert.deepEqual(told(document), []);
  });

  it('a fret typed into one of 2,500 systems asks nothing of the parts', () => {
    const system = 'E2 |0---|2---|\n\n'.repeat(1250);
    const document = new Document(`part: one\n${system}part: two\n${system}`);
    assert.deepEqual(told(document), []);
    const reads: number[] = [];
    const { systems } = document;
    const last = systems.at(-1);
    assert.ok(last && systems.length === 2500);
    const { reading } = last;
    Object.defineProperty(last, 'reading', { get: () => (reads.push(1), reading) });
    const digit = { start: { line: 1, character: 4 }, end: { line: 1, character: 5 } };
    document.edit([{ range: digit, newText: '3' }]);
    told(document);
    assert.equal(reads.length, 0);
    document.edit([{ range: digit, newText: '|' }]);
    told(document);
    assert.notEqual(reads.length, 0, 'a bar sign does ask');
  });
});
