import assert from 'node:assert/strict';
import type { ImportAnswer } from '../../../../src/formats/plainTab/importAnswer';
import { readPlainTab } from '../../../../src/formats/plainTab/readPlainTab';
import { findInstrument } from '../../../../src/instrument/instruments';
import { readTuning } from '../../../../src/instrument/tuningValue';
import type { Tuning } from '../../../../src/instrument/tuning';
import { compare } from '../../../../src/music/fraction';
import type { NoteReading, Technique } from '../../../../src/notation/reading';
import type { System, TabDocument } from '../../../../src/notation/tabDocument';
import { open } from '../../../../src/service/open';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { readBars, type ExpectedNote } from './snippets/expectedNotes';
import { textOf, type Snippet } from './snippets/snippet';
import { SNIPPETS } from './snippets/snippets';

/*
 * The importer against readings that were worked out by hand without it (snippets/README.md says how to compare).
 */

const SETTINGS = { settings: DEFAULT_SETTINGS };

describe('plain tab becomes tab of the notation', () => {
  for (const snippet of SNIPPETS) {
    it(`${snippet.name}: ${snippet.why}`, () => check(snippet));
  }
});

function check(snippet: Snippet): void {
  const text = textOf(snippet);
  const answer = readPlainTab(text, SETTINGS);
  try {
    if (snippet.instrument === null) assert.equal(answer.text, text);
    else compareTab(snippet, answer, open(answer.text, DEFAULT_SETTINGS));
    compareWords(snippet, answer);
  } catch (error) {
    if (error instanceof Error)
      error.message += `\n${answer.text}\n${JSON.stringify(answer.guesses, null, 1)}`;
    throw error;
  }
}

function compareTab(snippet: Snippet, answer: ImportAnswer, document: TabDocument): void {
  const { systems } = document;
  assert.equal(systems.length, snippet.systems.length, 'systems');
  assert.equal(answer.systems, snippet.systems.length);
  const instrument = findInstrument(snippet.instrument ?? '') ?? assert.fail();
  for (const [i, system] of systems.entries()) {
    const { header, reading } = system;
    assert.equal(header.instrument.name, instrument.name);
    const tuning = readTuning(snippet.tuning ?? instrument.usualTuning, { instrument });
    assert.ok(tuning.ok);
    assert.deepEqual(openStrings(header.tuning), openStrings(tuning.value), 'tuning');
    assert.equal(header.capo?.fret ?? null, snippet.capo, 'capo');
    const expected = snippet.systems[i] ?? [];
    assert.equal(reading.bars.length, expected.length, 'bars');
    assert.deepEqual(read(system), sorted(readBars(expected)), `notes of system ${i + 1}`);
    const errors = reading.problems.filter(({ kind }) => !HINTS.has(kind));
    assert.deepEqual(errors, [], 'problems');
  }
  if (snippet.repeats) {
    const repeats = systems.flatMap(({ reading }, system) =>
      reading.repeats.map((one) => ({ system, ...one })),
    );
    for (const repeat of snippet.repeats)
      assert.ok(
        repeats.some((one) => JSON.stringify({ ...one, ...repeat }) === JSON.stringify(one)),
        `repeats ${JSON.stringify(repeats)}`,
      );
  }
}

/** What the reading may still remark on without having misread anything. */
const HINTS: ReadonlySet<string> = new Set(['usual-labels']);

function openStrings(tuning: Tuning): number[] {
  return tuning.strings.map(({ pitches }) => pitches[0].midi);
}

function read({ reading }: System): ExpectedNote[] {
  const onsets = [...reading.notes].sort((a, b) => compare(a.onset, b.onset));
  let moment = -1;
  return sorted(
    onsets.map((note, i): ExpectedNote => {
      const before = onsets[i - 1];
      if (!before || compare(before.onset, note.onset) !== 0) moment += 1;
      return {
        moment,
        bar: note.bar,
        string: note.string,
        kind: note.kind,
        fret: note.fret,
        touched: note.touched,
        ghost: note.ghost,
        techniques: note.techniques.map((technique) => ({
          kind: technique.kind,
          toFret: ENDS.has(technique.kind) ? fretOf(technique, note) : undefined,
        })),
      };
    }),
  );
}

const ENDS: ReadonlySet<string> = new Set(['bend', 'pre-bend', 'release', 'trill']);

function fretOf({ to }: Technique, { pitches, fret }: NoteReading): number | undefined {
  const pitch = pitches[0]?.midi;
  return to === undefined || pitch === undefined ? undefined : to - pitch + (fret ?? 0);
}

function sorted(notes: readonly ExpectedNote[]): ExpectedNote[] {
  return [...notes].sort((a, b) => a.moment - b.moment || b.string - a.string);
}

function compareWords(snippet: Snippet, answer: ImportAnswer): void {
  const lines = answer.text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .map((line) => line.trimEnd());
  const unmarked = lines.map((line) => line.replace(/^(?:> ?)+/, ''));
  for (const line of snippet.kept)
    assert.ok(lines.includes(line) || unmarked.includes(line), `kept: ${line}`);
  for (const { row, text } of snippet.rows ?? []) {
    const found = open(answer.text, DEFAULT_SETTINGS).systems.flatMap(({ reading }) =>
      reading.rows.filter((one) => one.row === row).map(({ marks }) => marks.map((mark) => mark.text)),
    );
    const wanted = row === 'palm mute' ? ['PM'] : text.split(/\s+/).filter((word) => word !== '');
    const told = found.some((marks) => (row === 'palm mute' ? marks.length > 0 : same(marks, wanted)));
    assert.ok(told || lines.includes(text), `row ${row}: ${text}`);
  }
  for (const remark of snippet.remarks ?? []) assert.ok(answer.text.includes(remark), `remark: ${remark}`);
  const said = new Set(answer.guesses.map(({ kind }) => kind));
  for (const kind of snippet.guesses) assert.ok(said.has(kind), `guess: ${kind}`);
  if (snippet.quiet) assert.deepEqual(answer.guesses, [], 'nothing is said');
}

/** Words in order; case, and + for &, are not judged. */
function same(marks: readonly string[], wanted: readonly string[]): boolean {
  const plain = (words: readonly string[]): string => words.join(' ').toLowerCase().replaceAll('+', '&');
  return plain(marks) === plain(wanted);
}
