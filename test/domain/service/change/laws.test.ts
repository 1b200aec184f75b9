import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Document } from '../../../../src/notation/document';
import type { Range } from '../../../../src/notation/tabDocument';
import { convert } from '../../../../src/service/change/convert';
import { moveCapo } from '../../../../src/service/change/moveCapo';
import { slicesIn, type Slice } from '../../../../src/service/change/slices';
import { transpose } from '../../../../src/service/change/transpose';
import type { Change, ChangeResult } from '../../../../src/service/serviceApi';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { fields, heard, missing, problems } from './heard';
import { randomSelection, randomSong } from './randomSong';

/* Laws from playing.md ("Nothing is lost in silence", "Laws"); no outside source states them. */

const TUNINGS = [
  'standard',
  'DADGAD',
  'open G',
  'half step down',
  'D2 A2 D3 F#3 A3 D4',
  'standard -2 0 0 0 0 0',
];
const UKULELE = ['standard', 'ADF#B', 'low G', 'half step down'];

type Selection = typeof randomSelection extends fc.Arbitrary<infer T> ? T : never;

function rangeOf(document: Document, selection: Selection): Range | undefined {
  if (!selection) return undefined;
  const line = (share: number): number => Math.floor((share * document.lineCount) / 1000);
  const places = [
    { line: line(selection.from), character: selection.fromCharacter },
    { line: line(selection.to), character: selection.toCharacter },
  ].sort((a, b) => a.line - b.line || a.character - b.character);
  const [start, end] = places;
  assert.ok(start && end);
  return { start, end };
}

/** A tuning that every instrument in the document can read. */
function tuningFor(document: Document, choice: number): string {
  const names = new Set(document.systems.map(({ header }) => header.instrument.name));
  if (names.size > 1) return 'standard';
  const list = names.has('ukulele') ? UKULELE : TUNINGS;
  return list[choice % list.length] ?? 'standard';
}

function changeOf(result: ChangeResult, document: Document): Change {
  assert.ok(!('error' in result), `${'error' in result ? result.error : ''}\n${document.text()}`);
  return result;
}

function after(document: Document, change: Change): Document {
  const next = new Document(document.text());
  assert.ok(change.edits.length <= 1, 'one stretch');
  next.edit(change.edits);
  // What an editor makes of the edit is what the document makes of it, and a fresh reading of the text agrees.
  assert.equal(next.text(), new Document(next.text()).text());
  return new Document(next.text());
}

interface Held {
  readonly halfSteps?: number;
  /** Whether notes stay where they are and may sound otherwise. */
  readonly places?: boolean;
}

/** A slice, or all of its system where the report says that it could not be cut. */
function takenWhole(document: Document, slice: Slice, remarks: readonly string[]): Slice {
  const { firstBar } = document.placeOf(slice.system);
  const lastBar = slice.system.reading.bars.length - 1;
  const together = `Bars ${firstBar}–${firstBar + lastBar} are changed together; `;
  return remarks.some((remark) => remark.startsWith(together)) ? { ...slice, firstBar: 0, lastBar } : slice;
}

/** Everything that must be true of a change. */
function holds(text: string, range: Range | undefined, result: ChangeResult, held: Held): Document {
  const document = new Document(text);
  const change = changeOf(result, document);
  const { report } = change;
  const changed = after(document, change);
  const slices = slicesIn(document, range).map((slice) => takenWhole(document, slice, report.remarks));
  const before = heard(document, slices, held.halfSteps);
  const now = heard(changed, []);
  const told = `${text}\n---\n${changed.text()}\n${JSON.stringify(report, null, 1)}`;

  const inside = before.filter((note) => note.inside);
  assert.equal(report.notesIn, inside.length, told);
  assert.equal(report.notesIn, report.kept + report.moved + report.unplaced.length, told);

  // Outside: the same sound at the same place of the neck.
  const whole = (note: (typeof now)[number]): string => `${note.sound} at ${note.place}`;
  const outside = before.filter((note) => !note.inside).map(whole);
  assert.deepEqual(missing(outside, now.map(whole)), [], told);

  // Inside: all but the notes that the report names, each at its exact time with all that is done to it.
  const rest = missing(now.map(whole), outside);
  if (held.places) {
    const onset = (sound: string): string => sound.split(' ').slice(0, 2).join(' ');
    const place = (sound: string, at: string): string => `${onset(sound)} ${at}`;
    const here = inside.map((note) => place(note.sound, note.place));
    const there = rest.map((one) => place(one, one.split(' at ')[1] ?? ''));
    assert.equal(missing(there, here).length, 0, told);
    assert.equal(missing(here, there).length, report.unplaced.length, told);
  } else {
    const sounds = rest.map((one) => one.split(' at ')[0] ?? '');
    assert.deepEqual(
      missing(
        sounds,
        inside.map((note) => note.sound),
      ),
      [],
      told,
    );
    assert.equal(
      missing(
        inside.map((note) => note.sound),
        sounds,
      ).length,
      report.unplaced.length,
      told,
    );
  }

  // Every line outside the systems stands, in its order; the fields over what is outside say what they said.
  const lines = changed.text().split('\n');
  let at = 0;
  for (let i = 0; i < document.lineCount; i++) {
    const line = document.line(i);
    if (line.kind === 'string' || line.kind === 'row' || line.kind === 'field' || line.kind === 'blank')
      continue;
    const found = lines.indexOf(line.text, at);
    assert.ok(found >= at, `${line.text} is gone\n${told}`);
    at = found + 1;
  }
  const untouched = document.systems.filter((system) => !slices.some((slice) => slice.system === system));
  const headers = changed.systems.map(
    ({ header, lines: own }) => `${fields(header)} ${own.map((l) => l.text).join('\n')}`,
  );
  for (const system of untouched)
    assert.ok(
      headers.includes(`${fields(system.header)} ${system.lines.map((l) => l.text).join('\n')}`),
      `a system outside changed\n${told}`,
    );

  // What was told before may be told of each piece of a system that was cut.
  const known = new Set(problems(document));
  assert.deepEqual(
    problems(changed).filter(
      (kind) => !known.has(kind) && !HINTS.has(kind) && !(held.places && SHAPES.has(kind)),
    ),
    [],
    told,
  );

  // The report is in the order of the parts and bars, and speaks to people.
  const parts = document.parts;
  const order = report.unplaced.map(({ part, bar }) => parts.indexOf(part) * 10_000 + bar);
  assert.deepEqual(
    order,
    [...order].sort((a, b) => a - b),
    told,
  );
  for (const { reason } of report.unplaced) assert.match(reason, /^[a-z][^\n]*[^.\s]$/, told);
  for (const remark of report.remarks) assert.match(remark, /^[A-Z\d][^\n]*[.]$/, told);
  assert.doesNotMatch(JSON.stringify(report), /MIDI|undefined|NaN|null/, told);
  return changed;
}

/** A slide to nowhere may have got a note behind it on its new string, which is hinted at. */
const HINTS: ReadonlySet<string> = new Set(['slide-off']);

/** Shapes that stay under a partial capo may make no sense there, which is the player's to see. */
const SHAPES: ReadonlySet<string> = new Set([
  'hammer-not-rising',
  'pull-not-falling',
  'slide-against-sign',
  'bend-not-rising',
  'bend-open-string',
]);

/** A fixed seed, so that a suite that passed passes again; other runs and seeds by hand. */
const SETTINGS = {
  numRuns: Number(process.env['CHANGE_RUNS'] ?? 150),
  seed: Number(process.env['CHANGE_SEED'] ?? 20261125),
};

describe('a change of a passage, at random', () => {
  const run = (check: (text: string, range: Range | undefined, choice: number) => void): void => {
    fc.assert(
      fc.property(randomSong, randomSelection, fc.nat(30), (text, selection, choice) => {
        const document = new Document(text);
        const range = rangeOf(document, selection);
        if (slicesIn(document, range).length === 0) return;
        check(text, range, choice);
      }),
      SETTINGS,
    );
  };

  it('to another tuning with its sound: every note is kept, or named with the reason', () => {
    run((text, range, choice) => {
      const document = new Document(text);
      const tuning = tuningFor(document, choice);
      holds(text, range, convert(document, { range, tuning, keep: 'sound' }, DEFAULT_SETTINGS), {});
    });
  });

  it('to another tuning with its shapes: every string, fret and time stays', () => {
    run((text, range, choice) => {
      const document = new Document(text);
      const tuning = tuningFor(document, choice);
      const result = convert(document, { range, tuning, keep: 'shapes' }, DEFAULT_SETTINGS);
      holds(text, range, result, { places: true });
    });
  });

  it('by half steps: every note moves, or is named with the reason', () => {
    run((text, range, choice) => {
      const by = (choice % 15) - 7;
      const result = transpose(new Document(text), { range, by }, DEFAULT_SETTINGS);
      holds(text, range, result, { halfSteps: by });
    });
  });

  it('with the capo elsewhere and its sound: every note is kept, or named with the reason', () => {
    run((text, range, choice) => {
      const capo = ['none', '1', '2', '3', '2 on 4 3', '4 on 3 2 1'][choice % 6] ?? 'none';
      const result = moveCapo(new Document(text), { range, capo, keep: 'sound' }, DEFAULT_SETTINGS);
      holds(text, range, result, {});
    });
  });

  it('with the capo elsewhere and its shapes: every string, fret and time stays', () => {
    run((text, range, choice) => {
      const capo = ['none', '1', '2', '3', '2 on 4 3', '4 on 3 2 1'][choice % 6] ?? 'none';
      const result = moveCapo(new Document(text), { range, capo, keep: 'shapes' }, DEFAULT_SETTINGS);
      holds(text, range, result, { places: true });
    });
  });
});

describe('there and back', () => {
  it('gives every pitch again when nothing was left out', () => {
    fc.assert(
      fc.property(randomSong, fc.nat(30), (text, choice) => {
        const document = new Document(text);
        const tunings = new Set(document.systems.map(({ header }) => header.tuning.text));
        const [back] = tunings;
        if (tunings.size !== 1 || back === undefined) return;
        const there = convert(
          document,
          { range: undefined, tuning: tuningFor(document, choice), keep: 'sound' },
          DEFAULT_SETTINGS,
        );
        const change = changeOf(there, document);
        if (change.report.unplaced.length > 0) return;
        const other = after(document, change);
        const again = changeOf(
          convert(other, { range: undefined, tuning: back, keep: 'sound' }, DEFAULT_SETTINGS),
          other,
        );
        if (again.report.unplaced.length > 0) return;
        const sounds = (d: Document): string[] => heard(d, []).map(({ sound }) => sound);
        const last = after(other, again);
        assert.deepEqual(missing(sounds(last), sounds(document)), []);
        assert.deepEqual(missing(sounds(document), sounds(last)), []);
      }),
      SETTINGS,
    );
  });

  it('up and down again gives every pitch when nothing was left out', () => {
    fc.assert(
      fc.property(randomSong, fc.integer({ min: 1, max: 5 }), (text, by) => {
        const document = new Document(text);
        const up = changeOf(transpose(document, { range: undefined, by }, DEFAULT_SETTINGS), document);
        if (up.report.unplaced.length > 0) return;
        const high = after(document, up);
        const down = changeOf(transpose(high, { range: undefined, by: -by }, DEFAULT_SETTINGS), high);
        if (down.report.unplaced.length > 0) return;
        const sounds = (d: Document): string[] => heard(d, []).map(({ sound }) => sound);
        const last = after(high, down);
        assert.deepEqual(missing(sounds(last), sounds(document)), []);
      }),
      SETTINGS,
    );
  });

  it('to the tuning it stands in changes nothing at all', () => {
    fc.assert(
      fc.property(randomSong, (text) => {
        const document = new Document(text);
        const [first] = document.systems;
        assert.ok(first);
        const tuning = first.header.tuning.text;
        if (document.systems.some(({ header }) => header !== first.header)) return;
        const change = changeOf(
          convert(document, { range: undefined, tuning, keep: 'sound' }, DEFAULT_SETTINGS),
          document,
        );
        assert.deepEqual(change.edits, []);
        assert.equal(change.report.kept, change.report.notesIn);
      }),
      SETTINGS,
    );
  });
});
