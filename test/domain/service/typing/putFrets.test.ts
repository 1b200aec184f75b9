import assert from 'node:assert/strict';
import fc from 'fast-check';
import { applyEdits } from '../../../../src/cli/applyEdits';
import { equal } from '../../../../src/music/fraction';
import type { StringSign } from '../../../../src/service/typing/putFretsRequest';
import { putFretsChange } from '../../../../src/service/typing/putFretsChange';
import type { Change } from '../../../../src/service/serviceApi';
import { randomTab } from '../../support/randomTab';
import { openAt, service, settings } from '../cursor';

type Signs = readonly (readonly [string: number, sign: StringSign])[];

function put(marked: string, signs: Signs): { readonly text: string; readonly change: Change } {
  const { document, place } = openAt(marked);
  const change = putFretsChange(document, place, new Map(signs), 'It is written');
  if ('error' in change) throw new Error(change.error);
  return { text: applyEdits(document.text(), change.edits), change };
}

function refused(marked: string, signs: Signs): string {
  const { document, place } = openAt(marked);
  const change = putFretsChange(document, place, new Map(signs), 'It is written');
  return 'error' in change ? change.error : 'no error';
}

/** A system in DADGAD of these string lines, string 1 first. */
const dadgad = (...lines: readonly string[]): string =>
  `tuning: DADGAD\n\n${lines.map((line, i) => `${['D4', 'A3', 'G3', 'D3', 'A2', 'D2'][i] ?? ''} ${line}`).join('\n')}\n`;

describe('frets put at a column', () => {
  it('on dashes: nothing else moves', () => {
    const { text, change } = put(
      dadgad('|0-------|', '|--<|>----3-|', '|--------|', '|--------|', '|--------|', '|0-------|'),
      [
        [3, 2],
        [4, 0],
      ],
    );
    assert.equal(
      text,
      dadgad('|0-------|', '|------3-|', '|--2-----|', '|--0-----|', '|--------|', '|0-------|'),
    );
    assert.deepEqual([change.report.notesIn, change.edits.length], [0, 1]);
  });

  it('what stands there makes way: kept, moved, taken away, and counted so', () => {
    const { text, change } = put(
      dadgad('|0---2---|', '|<|>3-------|', '|5-------|', '|--------|', '|--------|', '|0-------|'),
      [
        [1, 0],
        [2, 'x'],
        [3, 7],
        [6, 'nothing'],
      ],
    );
    assert.equal(
      text,
      dadgad('|0---2---|', '|x-------|', '|7-------|', '|--------|', '|--------|', '|--------|'),
    );
    const { notesIn, kept, moved, unplaced } = change.report;
    assert.deepEqual([notesIn, kept, moved], [4, 1, 2]);
    assert.deepEqual(unplaced, [{ bar: 1, name: 'D2', reason: 'string 6 is not played any more' }]);
  });

  it('a second digit gets a column without time where the next one is taken', () => {
    const { text } = put(
      dadgad('|0-1-2-3-|', '|-<|>4-5-6-7|', '|--------|', '|--------|', '|--------|', '|--------|'),
      [[3, 10]],
    );
    assert.match(text, /^D4 \|0--1-2-3-\|$/m);
    assert.match(text, /^G3 \|-10------\|$/m);
  });

  it('strings that the system leaves out are written', () => {
    const { text } = put('tuning: DADGAD\n\nD4 |<|>0-------|\nD2 |0-------|\n', [[3, 2]]);
    assert.match(text, /^G3 \|2-------\|$/m);
    assert.equal(text.split('\n').filter((line) => line.includes('|')).length, 6);
  });

  it('the fields, rows and other systems stay', () => {
    const text = `title: One\ntuning: DADGAD\n\nchords |D5  G5  |\nD4     |0---2---|\nA3     |--<|>------|\nG3     |--------|\nD3     |--------|\nA2     |--------|\nD2     |0-------|\n\nLeft alone.\n`;
    const after = put(text, [[3, 2]]).text.split('\n');
    const before = text.replace('<|>', '').split('\n');
    before.forEach((line, i) => {
      if (i !== 6) assert.equal(after[i], line);
    });
    assert.equal(after[6], 'G3     |--2-----|');
  });

  it('what cannot be: one sentence each', () => {
    const at = (line: string): string =>
      dadgad(line, '|--------|', '|--------|', '|--------|', '|--------|', '|--------|');
    assert.match(refused('Only words<|> here', [[1, 0]]), /place the cursor on a column of a system/);
    assert.match(
      refused(at('|0------<|>-|'), [[9, 0]]),
      /There is no string 9 in this tuning: its strings are 1 to 6/,
    );
    assert.match(refused(at('<|>|0-------|'), [[1, 0]]), /A bar sign stands there/);
    assert.match(
      refused(at('|-5<|>------|'), [[1, 0]]),
      /stands on string 1 there: place the cursor on a column/,
    );
    assert.match(refused('chords |C<|>  |\nwords |la |\n', [[1, 0]]), /has no string lines/);
  });
});

describe('laws of putting', () => {
  it('in systems at random every other note keeps its string, fret, signs and exact onset', function () {
    this.timeout(60_000);
    let written = 0;
    fc.assert(
      fc.property(
        randomTab,
        fc.nat(),
        fc.nat(),
        fc.array(
          fc.tuple(
            fc.integer({ min: 1, max: 6 }),
            fc.constantFrom<StringSign>(0, 2, 7, 10, 12, 'x', 'nothing'),
          ),
          {
            minLength: 1,
            maxLength: 6,
          },
        ),
        (text, which, where, signs) => {
          const document = service.open(text, settings);
          const system = document.systems[which % Math.max(1, document.systems.length)];
          const strings =
            system?.lines.flatMap((line, i) => (line.kind === 'string' ? [{ line, i }] : [])) ?? [];
          const one = strings[where % Math.max(1, strings.length)];
          if (!system || !one) return;
          const place = {
            line: system.firstLine + one.i,
            character: one.line.bodyStart + (where % Math.max(1, one.line.bodyEnd - one.line.bodyStart)),
          };
          const asked = new Map(signs);
          const change = putFretsChange(document, place, asked, 'It is written');
          if ('error' in change) return;
          written++;
          const after = service.open(applyEdits(text, change.edits), settings);
          const now = after.systems[document.systems.indexOf(system)];
          assert.ok(now);
          const { notesIn, kept, moved, unplaced } = change.report;
          assert.equal(notesIn, kept + moved + unplaced.length);
          const left = [...now.reading.notes];
          let lost = 0;
          for (const note of system.reading.notes) {
            const at = left.findIndex(
              (other) =>
                other.string === note.string &&
                other.fret === note.fret &&
                other.kind === note.kind &&
                equal(other.onset, note.onset),
            );
            if (at >= 0) left.splice(at, 1);
            else {
              lost++;
              assert.ok(asked.has(note.string), text);
            }
          }
          assert.ok(lost <= notesIn);
          // All that came begins at one moment, on the strings asked for.
          const [first] = left;
          for (const note of left) {
            assert.ok(asked.has(note.string));
            assert.ok(first && equal(note.onset, first.onset));
          }
          assert.equal(now.reading.bars.length, system.reading.bars.length);
        },
      ),
      { numRuns: 300 },
    );
    console.log(`      ${written} of 300 could be written`);
    assert.ok(written > 60);
  });
});
