import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { checkDocument } from '../../../src/checks/checkDocument';
import { CHECKS } from '../../../src/checks/checks';
import { writeCountAction } from '../../../src/checks/writeCountAction';
import { Document } from '../../../src/notation/document';
import { randomPiece } from '../support/randomPiece';
import { applyMend } from './apply';
import { SETTINGS } from './marked';

const DEMO = resolve(__dirname, '../../../media/demo');
const TEXTS = [
  ...CHECKS.flatMap(({ examples }) => [...examples.raises, ...examples.quiet]),
  ...readdirSync(DEMO).map((name) => readFileSync(resolve(DEMO, name), 'utf8')),
];

const text = fc.oneof(fc.constantFrom(...TEXTS), randomPiece());

/** What people and their programs put into tab. */
const scrap = fc.oneof(
  fc.constantFrom(
    '|', '-', '--', '0', '12', '45', 'x', 'h', 'p', 'b', 'r', '/', '\\', '~', '(', ')', '<3>', '<12>', '.', ' ',
    '\t', '\n', '\n\n', '\r\n', ':', '|:', ':|', 'E|', 'H|', '–', '│', '1 & 2', 'Dm', '#', '[Verse]\n',
    'tuning: open G\n', 'tuning: A\n', 'part: low\n', 'part:\n', 'capo: 2 on 5 4 3\n', 'fretting: slide\n',
    'count |1 2 9 x|\n', 'chords |Dm H7|\n', 'meter: 7/8\n', 'instrument: banjo\n', '漢', '́', '🎸',
  ), // prettier-ignore
  fc.string({ maxLength: 6 }),
);

const edit = fc.record({
  line: fc.nat({ max: 40 }),
  character: fc.nat({ max: 40 }),
  lines: fc.nat({ max: 2 }),
  length: fc.nat({ max: 4 }),
  newText: scrap,
});
const edits = fc.array(edit, { minLength: 1, maxLength: 8 });
type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never;

function apply(document: Document, { line, character, lines, length, newText }: Edit): void {
  const at = line % document.lineCount;
  document.edit([
    {
      range: { start: { line: at, character }, end: { line: at + lines, character: character + length } },
      newText,
    },
  ]);
}

describe('checks, whatever the text', () => {
  it('never throw, and every mend can be applied', () => {
    fc.assert(
      fc.property(text, edits, (start, changes) => {
        const document = new Document(start);
        for (const change of changes) apply(document, change);
        const written = document.text();
        for (const { range, message, mends } of checkDocument(document, SETTINGS)) {
          assert.ok(message.length > 0);
          const line = document.line(range.start.line).text;
          assert.ok(range.start.character <= range.end.character && range.end.character <= line.length);
          for (const mend of mends) applyMend(written, mend);
        }
        for (const system of document.systems) {
          const action = writeCountAction(system);
          if (action) applyMend(written, action);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('tell after any edits what they tell of the text anew', () => {
    fc.assert(
      fc.property(text, edits, (start, changes) => {
        const document = new Document(start);
        checkDocument(document, SETTINGS);
        for (const change of changes) {
          apply(document, change);
          const fresh = checkDocument(new Document(document.text()), SETTINGS);
          assert.deepEqual(checkDocument(document, SETTINGS), fresh, document.text());
        }
      }),
      { numRuns: 250 },
    );
  });

  it('give the same list while nothing changes', () => {
    const document = new Document('G|--5q--|\n\nA|--3--|\n');
    const first = checkDocument(document, SETTINGS);
    assert.equal(first.length, 1);
    assert.equal(checkDocument(document, SETTINGS), first);
  });

  it('take severities and the reach from the settings', () => {
    const document = new Document('E|9---|\nB|----|\nG|5q--|\nD|----|\nA|2---|\nE|----|\n');
    const codes = (reach: number, severities: Record<string, 'hint' | 'off'>): string[] =>
      checkDocument(document, { reach, severities }).map(({ code, severity }) => `${severity} ${code}`);
    assert.deepEqual(codes(130, {}), ['warning stretch-over-reach', 'error unknown-sign']);
    assert.deepEqual(codes(250, {}), ['error unknown-sign']);
    assert.deepEqual(codes(130, { 'unknown-sign': 'off', 'stretch-over-reach': 'hint' }), [
      'hint stretch-over-reach',
    ]);
  });

  it('forget what rang in from a system that is gone', () => {
    const first = 'E|----|\nB|----|\nG|----|\nD|----|\nA|----|\nE|2---|\n\n';
    const second =
      'chords |D   |\nE      |2---|\nB      |3---|\nG      |2---|\nD      |0---|\nA      |----|\nE      |----|\n';
    const song = first.replace('E|2---', 'E|3---') + second;
    const document = new Document(song);
    assert.deepEqual(
      checkDocument(document, SETTINGS).map(({ code }) => code),
      ['chord-adds'],
    );
    document.edit([
      { range: { start: { line: 0, character: 0 }, end: { line: 7, character: 0 } }, newText: '' },
    ]);
    assert.deepEqual(checkDocument(document, SETTINGS), []);
  });
});

describe('writing the count', () => {
  it('says the very times that were worked out', () => {
    let written = 0;
    fc.assert(
      fc.property(randomPiece(), (start) => {
        const document = new Document(start);
        for (const system of document.systems) {
          const action = writeCountAction(system);
          if (!action) continue;
          written += 1;
          const after = new Document(applyMend(start, action));
          const same = after.systems.find(({ firstLine }) => firstLine === system.firstLine);
          assert.equal(same?.reading.timing, 'counted');
          const times = (reading: typeof system.reading): string[] =>
            reading.notes.map(({ onset, string, fret }) => `${onset.n}/${onset.d} ${string}:${fret ?? 'x'}`);
          assert.deepEqual(times(same.reading), times(system.reading));
        }
      }),
      { numRuns: 100 },
    );
    assert.ok(written > 50, `counts were written: ${written}`);
  });

  it('is not offered where a count stands or nothing is played', () => {
    for (const text of ['count |1 2 3 4 |\nG     |0-2-3-5-|\n', 'G|--------|\n', 'chords |G   |\n']) {
      const [system] = new Document(text).systems;
      assert.ok(system);
      assert.equal(writeCountAction(system), undefined);
    }
  });

  it('makes room for its word', () => {
    const text = 'B|0---2---4---5---|\nG|----------------|\n';
    const [system] = new Document(text).systems;
    const action = system && writeCountAction(system);
    assert.ok(action);
    assert.equal(
      applyMend(text, action),
      'count |1   2   3   4   |\nB     |0---2---4---5---|\nG     |----------------|\n',
    );
  });
});
