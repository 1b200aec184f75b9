import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Document } from '../../../src/notation/document';
import { parseLine } from '../../../src/notation/parseLine';
import type { TextEdit } from '../../../src/notation/tabDocument';
import { mutatedLine, seedLines } from '../support/lines';
import { randomFrom } from '../support/random';

/** Asks a document everything it can be asked. */
function read(text: string): Document {
  const document = new Document(text);
  assert.equal(document.text(), text);
  for (const system of document.systems) {
    document.placeOf(system);
    document.ringingInto(system);
    for (const note of system.reading.notes) document.endOf(system, note);
    for (const { line, start, end } of system.reading.problems) {
      const { length } = system.lines[line]?.text ?? assert.fail('a problem stands on no line');
      assert.ok(0 <= start && start <= end && end <= length, `a problem at ${start}–${end} of ${length}`);
    }
  }
  for (const { problems } of document.fieldGroups) {
    for (const { field, start, end } of problems) {
      const { length } = field.line.text;
      assert.ok(0 <= start && start <= end && end <= length + 1, `a problem at ${start}–${end} of ${length}`);
    }
  }
  for (let i = 0; i < document.lineCount; i++) document.headerAt(i);
  return document;
}

/** Work takes at most so many milliseconds of the processor's time, however busy the machine is otherwise. */
function within(milliseconds: number, work: () => void): void {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  const took = (user + system) / 1000;
  assert.ok(took < milliseconds, `took ${took.toFixed(0)} ms, at most ${milliseconds} are allowed`);
}

const SETTINGS = { numRuns: 500, seed: 20_261_125 };

describe('no text', function () {
  this.timeout(30_000);
  it('of any characters makes a document throw', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => void read(text)),
      SETTINGS,
    );
    fc.assert(
      fc.property(fc.array(fc.nat(0xffff), { maxLength: 300 }), (codes) => {
        read(String.fromCharCode(...codes));
      }),
      SETTINGS,
    );
  });

  it('of mutated lines makes a document throw', () => {
    const random = randomFrom(20_261_125);
    const seeds = seedLines();
    for (let i = 0; i < 800; i++) {
      const lines = Array.from({ length: 1 + random.below(20) }, () => mutatedLine(seeds, random));
      read(lines.join('\n'));
    }
  });

  it('of one kind of sign makes a document throw', () => {
    for (const sign of [
      '0',
      'x',
      '(',
      ')',
      '<',
      '<1>',
      '.',
      ':',
      '|',
      '/',
      '\\',
      'h',
      'b',
      'b9',
      'tr',
      '~',
      'r',
    ]) {
      for (const times of [1, 2, 3, 50]) {
        const run = sign.repeat(times);
        read(`G3|${run}`);
        read(`G3|${run}|`);
        read(`G3|-${run}-5${run}-|`);
        read(`G3|5${run}7|`);
        read(`count |${run}|\nG3    |--${run}--|`);
      }
    }
  });

  it('with fields of any value makes a document throw', () => {
    const names = ['instrument', 'tuning', 'capo', 'frets', 'scale length', 'gauges', 'reference pitch'];
    const others = ['key', 'meter', 'tempo', 'feel', 'fretting', 'part', 'title', 'by', 'remark'];
    const value = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 20 }),
      fc.string({ unit: fc.constantFrom(...'EADGB#b/-+0123456789 .,=:()constructor'), maxLength: 30 }),
      fc.constantFrom('constructor', '__proto__', 'toString', '9'.repeat(400), '1/0', '-0', 'NaN', '1e9'),
    );
    const field = fc.tuple(fc.constantFrom(...names, ...others), value).map((parts) => parts.join(': '));
    fc.assert(
      fc.property(fc.array(field, { maxLength: 6 }), (fields) => {
        read(`${fields.join('\n')}\nG|0---2-<12>-(3)-|\nD|----------------|\n`);
      }),
      SETTINGS,
    );
  });

  it('with letters that only look alike in capitals makes a field or row without a name', () => {
    // Ohm compares by capitals: a long s is an S there, a dotless i an I.
    assert.deepEqual(pick(parseLine('tıtle: Gate')), ['field', 'title']);
    assert.deepEqual(pick(parseLine('ſcale length: 648 mm')), ['field', 'scale length']);
    assert.deepEqual(pick(parseLine('chordſ |D |')), ['row', 'chords']);
    read('tıtle: Gate\nſcale length: 648 mm\n\nchordſ |D |\nG3     |--|\n');
  });

  it('that is broken Unicode loses a character', () => {
    for (const half of ['\ud83d', '\udc1d', '\ud83d\ud83d', '\udc1d\ud83d']) {
      read(`title: ${half}\n${half}\nG3|-${half}5-|${half}\nwords |${half}|\n`);
    }
  });

  it('that ends lines in any way loses a character', () => {
    for (const text of ['', '\r', '\n', '\r\n', '\n\r', '\r\r\n\n', 'a\rb\nc\r\nd', '\u2028\u2029\u0085\v\f'])
      read(text);
  });
});

function pick(line: ReturnType<typeof parseLine>): [string, string] {
  return [line.kind, line.kind === 'field' ? line.field : line.kind === 'row' ? line.row : ''];
}

describe('very long texts', function () {
  this.timeout(30_000);
  const STRINGS = ['e', 'B', 'G', 'D', 'A', 'E'];

  it('of 10,000 columns are read quickly', () => {
    const bar = '0---2-3-12--x-h5|';
    within(3000, () => read(STRINGS.map((name) => `${name}|${bar.repeat(600)}`).join('\n')));
  });

  it('of one bar of 10,000 columns are read quickly', () => {
    within(3000, () => read(STRINGS.map((name) => `${name}|${'-0-5h7-'.repeat(1430)}|`).join('\n')));
    within(3000, () => read(`count |${'1 & 2 & '.repeat(1250)}|\nG3    |${'--5-'.repeat(2500)}|`));
  });

  it('of 10,000 signs of any one kind are read quickly', () => {
    for (const sign of [
      '|',
      ':',
      ':|:',
      '(',
      '<',
      '<12>',
      '0',
      '/',
      '.',
      'b9',
      'h',
      'q',
      '东',
      '~',
      '-|',
      '- ',
    ]) {
      within(3000, () => read(`G3|-${sign.repeat(10_000)}`));
      within(3000, () => read(`G3|${sign.repeat(10_000)}`));
      within(3000, () => read(sign.repeat(10_000)));
    }
  });

  it('of long values and words are read quickly', () => {
    for (const name of ['tuning', 'capo', 'gauges', 'key', 'tunning']) {
      for (const sign of ['E ', '9', ' ', 'standard '])
        within(3000, () => read(`${name}: ${sign.repeat(10_000)}x`));
    }
  });

  it('of 100,000 lines are read and edited quickly', () => {
    const system = [
      '[Verse]',
      ...STRINGS.map((name, i) => `${name}|0---2---3---${i}---|0---2---3---${i}---|`),
      '',
    ];
    const text = Array.from({ length: 12_500 }, () => system.join('\n')).join('\n');
    let document: Document | undefined;
    within(5000, () => (document = new Document(text)));
    assert.ok(document && document.lineCount >= 100_000);
    assert.equal(document.systems.length, 12_500);
    const at = { line: 50_003, character: 4 };
    const type: TextEdit = { range: { start: at, end: at }, newText: '-' };
    within(300, () => document?.edit([type]));
    const paste: TextEdit = { range: { start: at, end: at }, newText: `${text}\n` };
    within(10_000, () => document?.edit([paste]));
    assert.ok(document.lineCount >= 200_000);
  });
});
