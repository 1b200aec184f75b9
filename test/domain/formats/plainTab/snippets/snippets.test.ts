import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { findInstrument } from '../../../../../src/instrument/instruments';
import { readTuning } from '../../../../../src/instrument/tuningValue';
import { stringLines, unquoted, type WrittenSign } from './crudeReading';
import { readBars, type ExpectedNote } from './expectedNotes';
import { textOf, type Snippet } from './snippet';
import { SNIPPETS } from './snippets';

/*
 * Whether the measure is true to itself: no importer is asked. The frets of every line are counted a second time by a
 * crude rule of its own, so that a slip in the table or in a text is seen here.
 */

describe('snippets of plain tab', () => {
  it('are at least 65, each with a text of its own', () => {
    const names = SNIPPETS.map(({ name }) => name);
    assert.ok(names.length >= 65, `${names.length} snippets`);
    assert.deepEqual(names.toSorted(), [...new Set(names)].toSorted(), 'no name twice');
    const texts = readdirSync(join(__dirname, 'text')).filter((file) => file.endsWith('.txt'));
    assert.deepEqual(texts.toSorted(), names.map((name) => `${name}.txt`).toSorted());
    const contents = SNIPPETS.map(textOf);
    assert.equal(new Set(contents).size, contents.length, 'no text twice');
  });

  for (const snippet of SNIPPETS) {
    describe(`${snippet.name}: ${snippet.why}`, () => check(snippet));
  }
});

function check(snippet: Snippet): void {
  const text = textOf(snippet).replace(/^\uFEFF/, '');
  const systems = snippet.systems.map(readBars);

  it('keeps lines and pieces that the text has', () => {
    const lines = unquoted(text.split(/\r\n|\r|\n/)).map((line) => line.trimEnd());
    for (const line of [...snippet.kept, ...(snippet.rows ?? []).map((row) => row.text)]) {
      assert.ok(lines.includes(line), `no line "${line}"`);
      assert.equal(line, line.trimEnd());
      assert.notEqual(line, '');
    }
    for (const piece of snippet.remarks ?? []) assert.ok(text.includes(piece), `no "${piece}"`);
  });

  it('names an instrument and a tuning there are', () => {
    if (snippet.instrument === null) {
      assert.deepEqual([snippet.systems, snippet.tuning, snippet.capo], [[], null, null]);
      return;
    }
    const instrument = findInstrument(snippet.instrument) ?? assert.fail('no such instrument');
    const tuning = readTuning(snippet.tuning ?? 'standard', { instrument });
    assert.ok(tuning.ok || snippet.tuning === null, `tuning ${snippet.tuning ?? ''}`);
    const highest = tuning.ok ? tuning.value.strings.length : 6;
    for (const note of systems.flat()) {
      assert.ok(note.string >= 1 && note.string <= highest, `string ${note.string}`);
      assert.ok((note.fret ?? 0) <= instrument.frets, `fret ${note.fret ?? 0}`);
    }
  });

  it('is worked out soundly', () => {
    assert.ok(snippet.instrument === null || systems.length > 0, 'a system');
    for (const notes of systems) {
      const once = new Set(notes.map(({ moment, string }) => `${moment} ${string}`));
      assert.equal(once.size, notes.length, 'one note a string at a time');
      notes.forEach((note, i) => joins(notes, note, i));
    }
    if (snippet.quiet) assert.deepEqual(snippet.guesses, []);
    assert.equal(new Set(snippet.guesses).size, snippet.guesses.length);
    for (const { system, firstBar, lastBar, times } of snippet.repeats ?? []) {
      const bars = snippet.systems[system] ?? assert.fail(`system ${system}`);
      assert.ok(firstBar <= lastBar && lastBar < bars.length && times >= 2);
    }
  });

  if (snippet.instrument !== null && snippet.uncounted === undefined) {
    it('has the frets of its text, line by line', () => counted(snippet, systems, stringLines(text)));
  }
}

/** What a hammer-on, pull-off, slide or bend needs about it. */
function joins(notes: readonly ExpectedNote[], note: ExpectedNote, i: number): void {
  const before = notes.slice(0, i).findLast(({ string }) => string === note.string);
  const after = notes.slice(i + 1).find(({ string }) => string === note.string);
  for (const { kind, toFret } of note.techniques) {
    const fret = note.fret ?? assert.fail('a muted stroke has no technique');
    if (kind === 'hammer-on' && before) assert.ok((before.fret ?? 0) < fret, 'a hammer-on goes up');
    if (kind === 'pull-off') assert.ok(before && (before.fret ?? 0) > fret, 'a pull-off comes down');
    if (kind === 'slide') assert.ok(after, 'a slide arrives');
    if (kind === 'bend' || kind === 'pre-bend')
      assert.ok(toFret !== undefined && toFret > fret, 'a bend rises');
    if (kind === 'release') assert.ok(toFret !== undefined);
  }
}

function counted(
  snippet: Snippet,
  systems: readonly (readonly ExpectedNote[])[],
  lines: readonly (readonly WrittenSign[])[],
): void {
  const perSystem = lines.length / systems.length;
  assert.ok(Number.isInteger(perSystem), `${lines.length} string lines for ${systems.length} systems`);
  systems.forEach((notes, system) => {
    const own = lines.slice(system * perSystem, (system + 1) * perSystem);
    const strings = snippet.strings ?? own.map((_, i) => i + 1);
    assert.equal(strings.length, own.length, 'a number for every line');
    const placed = own.flatMap((signs, line) => {
      const there = notes.filter(({ string }) => string === strings[line]);
      assert.deepEqual(
        signs.map((sign) => sign.text),
        there.map(written),
        `system ${system + 1}, line ${line + 1}`,
      );
      return signs.map((sign, i) => ({ sign, moment: there[i]?.moment ?? -1 }));
    });
    assert.equal(placed.length, notes.length, 'every note stands on one of the lines');
    if (snippet.guesses.includes('alignment') || snippet.guesses.includes('tabs')) return;
    for (const a of placed) {
      for (const b of placed) {
        const together = a.sign.first <= b.sign.last && b.sign.first <= a.sign.last;
        if (a.moment === b.moment) assert.ok(together, `${a.sign.text} and ${b.sign.text} are far apart`);
        else if (a.moment < b.moment)
          assert.ok(a.sign.last < b.sign.first, `${a.sign.text} after ${b.sign.text}`);
      }
    }
  });
}

/** A note as its line has it. */
function written(note: ExpectedNote): string {
  return note.kind === 'muted' ? 'x' : String(note.touched ?? note.fret);
}
