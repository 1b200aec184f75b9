import assert from 'node:assert/strict';
import { readInstrument } from '../../../src/instrument/instruments';
import { readTuning } from '../../../src/instrument/tuningValue';
import type { Tuning } from '../../../src/instrument/tuning';
import { compare, type Fraction } from '../../../src/music/fraction';
import { formatNoteName, formatPitchName } from '../../../src/music/noteName';
import { DEFAULT_HEADER } from '../../../src/notation/headers';
import { Document } from '../../../src/notation/document';
import { parseLine } from '../../../src/notation/parseLine';
import type { LabelNote, StringLine } from '../../../src/notation/parsedLine';
import type { System } from '../../../src/notation/tabDocument';
import { readSystem } from '../../../src/notation/systemReading';
import {
  CELL_CASES,
  LINE_CASES,
  SYSTEM_CASES,
  TUNING_CASES,
  type CellCase,
  type LineCase,
  type SystemCase,
  type TuningCase,
} from './cases.table';

/* The sixty readings of the design, row by row; what a case leaves out is not settled and not looked at. */

describe('sixty readings: lines', () => {
  for (const one of LINE_CASES) it(`row ${one.n}: ${JSON.stringify(one.text)}`, () => checkLine(one));

  it('hold the kinds apart', () => {
    const kinds = new Set(LINE_CASES.map(({ kind }) => kind));
    assert.deepEqual([...kinds].sort(), ['field', 'prose', 'row', 'section', 'string']);
  });
});

function checkLine(one: LineCase): void {
  const line = parseLine(one.text);
  assert.equal(line.kind, one.kind);
  assert.equal(line.text, one.text);
  switch (line.kind) {
    case 'string':
      return checkString(line, one);
    case 'row':
      assert.equal(line.row, one.row);
      if (one.word !== undefined) assert.equal(line.word, one.word);
      if (one.marks) assert.deepEqual(texts(line.marks), one.marks);
      return assert.equal(line.nearRow, one.nearRow);
    case 'field':
      return assert.deepEqual([line.field, line.value], [one.field, one.value]);
    case 'section':
      return assert.deepEqual([line.name, line.times], [one.section, one.times]);
    case 'prose': {
      assert.ok(one.nearMiss, 'a row about prose says what is told');
      if (one.nearMiss === 'silent') return assert.equal(line.nearMiss, undefined);
      const { start, end, ...what } = line.nearMiss ?? assert.fail('nothing is told');
      assert.deepEqual(what, one.nearMiss);
      return assert.ok(start < end && end <= one.text.length, 'it points into the line');
    }
    default:
      assert.fail(`no row is about a ${line.kind} line`);
  }
}

function checkString(line: StringLine, one: LineCase): void {
  if (one.label && 'number' in one.label) assert.equal(line.label.number, one.label.number);
  else if (one.label) assert.deepEqual(line.label.notes.map(labelText), one.label.notes);
  const reading = readSystem([line], DEFAULT_HEADER, { firstInPart: true, firstInSection: true });
  if (one.bars !== undefined) assert.equal(reading.bars.length, one.bars);
  if (one.empty) assert.deepEqual(texts(line.tokens), ['|']);
  assert.deepEqual(texts(line.tokens.filter(({ kind }) => kind === 'junk')), one.junk ?? []);
  assert.equal(line.lookAlikes.length > 0, one.lookAlikes ?? false);
  const told = reading.problems.filter(({ kind }) => kind === 'look-alikes' || kind === 'unknown-sign');
  assert.equal(told.length, one.lookAlikes || one.junk ? 1 : 0);
  assert.deepEqual([line.remark?.text, line.remark?.times], [one.remark, one.times]);
}

function labelText(note: LabelNote): string {
  return `${formatPitchName(note)}${note.octave ?? ''}`;
}

function texts(pieces: readonly { readonly text: string }[]): string[] {
  return pieces.map(({ text }) => text);
}

describe('sixty readings: tunings', () => {
  for (const one of TUNING_CASES)
    it(`row ${one.n}: ${one.value} on ${one.instrument}`, () => checkTuning(one));
});

function checkTuning(one: TuningCase): void {
  const instrument = readInstrument(one.instrument);
  assert.ok(instrument.ok);
  const tuning = readTuning(one.value, { instrument: instrument.value });
  if ('error' in one) {
    assert.ok(!tuning.ok);
    assert.equal(tuning.error.kind, one.error);
    assert.ok(tuning.error.message.includes(one.says ?? ''), tuning.error.message);
    if (one.offers)
      assert.ok(tuning.error.suggestions.includes(one.offers), String(tuning.error.suggestions));
    return;
  }
  assert.ok(tuning.ok, tuning.ok ? '' : tuning.error.message);
  assert.equal(notesOf(tuning.value), one.notes);
  if (one.numbers) {
    const count = tuning.value.strings.length;
    assert.deepEqual(
      tuning.value.strings.map((_, index) => count - index),
      one.numbers,
    );
  }
}

function notesOf(tuning: Tuning): string {
  return tuning.strings
    .map(({ pitches }) => pitches.map(({ name }) => formatNoteName(name)).join('/'))
    .join(' ');
}

describe('sixty readings: signs in a cell', () => {
  for (const one of CELL_CASES) it(`row ${one.n}: ${one.text}`, () => checkCell(one));
});

function checkCell(one: CellCase): void {
  const system = onlySystem(one.text);
  const { notes, stops, problems } = system.reading;
  const line = system.lines[0];
  assert.ok(line?.kind === 'string');
  const columnOf = (offset: number): number => offset - line.bodyStart;
  if (one.notes) {
    const found = notes.map(({ kind, column, fret, techniques, joinedFrom }, i) => {
      const wanted = one.notes?.[i]?.techniques ?? [];
      return {
        kind,
        column,
        fret,
        joinedFrom,
        techniques: techniques.map(({ kind, to, toFret, start }, k) => ({
          kind,
          ...(wanted[k]?.toFret === undefined ? {} : { toFret }),
          ...(wanted[k]?.to === undefined ? {} : { to }),
          ...(wanted[k]?.column === undefined ? {} : { column: columnOf(start) }),
        })),
      };
    });
    const wanted = one.notes.map(({ kind, joinedFrom, ...rest }) => ({
      ...rest,
      kind: kind ?? 'fretted',
      joinedFrom,
    }));
    assert.deepEqual(found, wanted);
  }
  if (one.stops)
    assert.deepEqual(
      stops.map(({ column }) => column),
      one.stops,
    );
  // A single line leaves strings out only by its label, which G3 settles: nothing else may be told.
  assert.equal(problems.length, one.problem ? 1 : 0, problems.map(({ kind }) => kind).join());
  const [problem] = problems;
  if (!one.problem || !problem) return;
  const [from, to] = one.problem.columns;
  assert.ok(
    columnOf(problem.start) >= from && columnOf(problem.end) <= to,
    `${problem.start}–${problem.end}`,
  );
  if (one.problem.split) assert.equal(problem.facts['split'], one.problem.split.join('-'));
}

function onlySystem(text: string): System {
  const { systems } = new Document(text);
  assert.equal(systems.length, 1);
  return systems[0] ?? assert.fail();
}

describe('sixty readings: systems', () => {
  SYSTEM_CASES.forEach((one, i) => it(`row ${one.n} (${i + 1}): ${title(one)}`, () => checkSystem(one)));
});

function title({ text }: SystemCase): string {
  return (
    text
      .trim()
      .split('\n')
      .filter((line) => line !== '')[0] ?? ''
  );
}

function checkSystem(one: SystemCase): void {
  const document = new Document(one.text);
  const written = (time: Fraction): string => (time.d === 1 ? String(time.n) : `${time.n}/${time.d}`);
  if (one.parts) assert.deepEqual(document.parts, one.parts);
  if (one.places) {
    const places = document.systems.map((system) => document.placeOf(system));
    assert.deepEqual(
      places.map(({ part, firstBar, onset }) => ({ part, firstBar, onset: written(onset) })),
      one.places,
    );
    return;
  }
  assert.equal(document.systems.length, 1);
  const [system] = document.systems;
  assert.ok(system);
  const { notes, bars, repeats, timing, strings, problems } = system.reading;
  if (one.onsets) {
    const onsets = [...notes].sort((a, b) => compare(a.onset, b.onset)).map(({ onset }) => written(onset));
    assert.deepEqual([...new Set(onsets)], one.onsets);
  }
  if (one.bars) {
    assert.deepEqual(
      bars.map(({ onset, length, pickup }) => ({ onset: written(onset), length: written(length), pickup })),
      one.bars,
    );
  }
  if (one.firstBar !== undefined) assert.equal(document.placeOf(system).firstBar, one.firstBar);
  if (one.repeats) assert.deepEqual(repeats, one.repeats);
  if (one.timing) assert.equal(timing, one.timing);
  if (one.strings)
    assert.deepEqual(
      strings.map(({ number }) => number),
      one.strings,
    );
  if (one.sounding) {
    const topFirst = [...notes].sort((a, b) => a.string - b.string);
    assert.deepEqual(
      topFirst.map(({ pitches }) => pitches.map(({ name }) => formatNoteName(name)).join('/')),
      one.sounding,
    );
  }
  if (one.told !== undefined)
    assert.equal(problems.length, one.told, problems.map(({ kind }) => kind).join());
}
