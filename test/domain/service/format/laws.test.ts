import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { CHECKS } from '../../../../src/checks/checks';
import { Document } from '../../../../src/notation/document';
import type { System } from '../../../../src/notation/tabDocument';
import { fixAll } from '../../../../src/service/mends/fixAll';
import { format } from '../../../../src/service/format/format';
import { open } from '../../../../src/service/open';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { applyEdits } from '../../checks/apply';
import { randomTab } from '../../support/randomTab';
import { disorderedTab } from './disorder';

const DEMO = resolve(__dirname, '../../../../media/demo');
const TEXTS = [
  ...CHECKS.flatMap(({ examples }) => [...examples.raises, ...examples.quiet]),
  ...readdirSync(DEMO).map((name) => readFileSync(resolve(DEMO, name), 'utf8')),
];
const anyText = fc.oneof(
  { weight: 1, arbitrary: fc.constantFrom(...TEXTS) },
  { weight: 1, arbitrary: randomTab },
  { weight: 4, arbitrary: disorderedTab },
);

/** A run of its own that is as long as wanted: PEGBOX_FUZZ=100000. */
const RUNS = Number(process.env['PEGBOX_FUZZ'] ?? 150);

const formatted = (text: string): string =>
  applyEdits(text, [...format(open(text, DEFAULT_SETTINGS))].reverse());

/**
 * All that a system says, written out here again from the types of the reading: this shares no code with the comparison
 * that the formatter makes.
 */
function sayings({ reading, lines }: System): unknown {
  return {
    notes: reading.notes.map((note) => [
      note.kind,
      note.string,
      note.fret,
      note.touched,
      note.ghost,
      note.bar,
      note.onset,
      note.ends,
      note.pitches.map(({ midi }) => midi),
      note.techniques.map(({ kind, sign, to, toFret, onset }) => [kind, sign, to, toFret, onset]),
      note.joinedFrom,
    ]),
    stops: reading.stops.map(({ string, onset }) => [string, onset]),
    bars: reading.bars.map(({ onset, length, pickup, openSign, closeSign }) => [
      onset,
      length,
      pickup,
      // The last bar of a system may go without its sign.
      openSign || '|',
      closeSign || '|',
    ]),
    repeats: reading.repeats,
    timing: reading.timing,
    rows: reading.rows.map(({ row, word, marks }) => [
      row,
      word,
      marks.map(({ text, onset }) => [text, onset]),
    ]),
    labels: lines.map((line) => (line.kind === 'string' ? [line.label.text, line.remark?.text] : line.kind)),
  };
}

const soundOf = (text: string): unknown => new Document(text).systems.map(sayings);

describe('formatting, whatever the text', () => {
  it('changes nothing that sounds, no onset, no mark and no word', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        assert.deepEqual(soundOf(formatted(text)), soundOf(text));
      }),
      { numRuns: RUNS },
    );
  });

  it('done twice is done once', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const once = formatted(text);
        assert.equal(formatted(once), once);
      }),
      { numRuns: RUNS },
    );
  });

  it('keeps the number of lines, their ends, and every line outside systems', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const after = formatted(text);
        const ends = (of: string): string[] => of.match(/\r\n|\r|\n/g) ?? [];
        assert.deepEqual(ends(after), ends(text));
        const [now, before] = [new Document(after), new Document(text)];
        for (let line = 0; line < before.lineCount; line++) {
          const kind = before.line(line).kind;
          assert.equal(now.line(line).kind, kind);
          if (kind !== 'string' && kind !== 'row') assert.equal(now.line(line).text, before.line(line).text);
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('tells of no more mistakes than before, and hides none of the times', () => {
    fc.assert(
      fc.property(disorderedTab, (text) => {
        const problems = (of: string): number =>
          new Document(of).systems.reduce((sum, { reading }) => sum + reading.problems.length, 0);
        assert.ok(problems(formatted(text)) <= problems(text));
      }),
      { numRuns: RUNS / 2 },
    );
  });

  it('sets most systems in order: where nothing was wrong all lines end together', () => {
    let inOrder = 0;
    let all = 0;
    fc.assert(
      fc.property(disorderedTab, (text) => {
        for (const { lines, reading } of new Document(formatted(text)).systems) {
          const strings = lines.flatMap((line) => (line.kind === 'string' ? [line] : []));
          if (reading.problems.some(({ kind }) => kind.startsWith('bar-') || kind === 'space-in-bar'))
            continue;
          all += 1;
          const sameStart = new Set(strings.map(({ bodyStart }) => bodyStart)).size <= 1;
          const sameWidth = new Set(strings.map(({ width }) => width)).size <= 1;
          if (sameStart && sameWidth) inOrder += 1;
        }
      }),
      { numRuns: RUNS, seed: 20261127 },
    );
    assert.ok(all > RUNS / 4, String(all));
    assert.ok(inOrder > all * 0.9, `${inOrder} of ${all}`);
  });
});

describe('all harmless mends at once, whatever the text', () => {
  const mended = (text: string): string =>
    applyEdits(text, [...fixAll(open(text, DEFAULT_SETTINGS), DEFAULT_SETTINGS)].reverse());
  const heard = (text: string): unknown =>
    new Document(text).systems.map(({ reading }) => ({
      notes: reading.notes.map(({ string, fret, onset, ends, pitches }) => [
        string,
        fret,
        onset,
        ends,
        pitches,
      ]),
      bars: reading.bars.map(({ onset, length }) => [onset, length]),
      repeats: reading.repeats,
    }));

  it('change no note and no onset', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        assert.deepEqual(heard(mended(text)), heard(text));
      }),
      { numRuns: RUNS / 2 },
    );
  });
});
