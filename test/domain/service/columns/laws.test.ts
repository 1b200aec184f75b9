import assert from 'node:assert/strict';
import fc from 'fast-check';
import { applyEdits } from '../../../../src/cli/applyEdits';
import { Document } from '../../../../src/notation/document';
import type { SystemReading } from '../../../../src/notation/reading';
import type { ColumnsRequest } from '../../../../src/service/columns/columnsRequest';
import { musicOf, type Telling } from '../../support/music';
import { randomTab } from '../../support/randomTab';
import { service, settings } from '../cursor';

/* What the column tools promise, over random systems with rows, repeats, endings and signs of every kind. */

/** A run of its own that is as long as wanted: PEGBOX_FUZZ=10000. */
const RUNS = Number(process.env['PEGBOX_FUZZ'] ?? 120);

type Asked = Omit<ColumnsRequest, 'range'>;

/** The text after an action; undefined where it is refused. */
function after(text: string, bar: number, asked: Asked): string | undefined {
  const place = placeOf(text, bar);
  const answer = service.columns(
    service.open(text, settings),
    { ...asked, range: { start: place, end: place } },
    settings,
  );
  return 'error' in answer ? undefined : applyEdits(text, answer.edits);
}

/** The first column of a bar on the first string line of the first system. */
function placeOf(text: string, bar: number): { line: number; character: number } {
  const document = service.open(text, settings);
  const system = document.systems[0];
  if (!system) throw new Error('no system');
  const line = system.firstLine + system.lines.findIndex(({ kind }) => kind === 'string');
  const start = document.line(line).text.indexOf('|');
  return { line, character: start + (system.reading.bars[bar]?.startColumn ?? 0) };
}

const readings = (text: string): SystemReading[] => new Document(text).systems.map(({ reading }) => reading);

/** The only system of a text. */
function whole(text: string): SystemReading {
  const [reading, ...more] = readings(text);
  assert(reading && more.length === 0, 'one system was expected');
  return reading;
}

/** Marks that are drawn out with dashes may grow and shrink with their columns. */
const drawn = (text: string): string => text.replace(/(^| )\S*-$/, '');

/** Whether notes in different bars are joined by signs: their bars go together. */
const joinsBars = ({ notes }: SystemReading): boolean =>
  notes.some(({ bar, joinedFrom }) => joinedFrom !== undefined && notes[joinedFrom]?.bar !== bar);

/** Notes, stops and marks; where repeats begin and end is told apart. */
function played(reading: SystemReading, telling?: Telling): unknown {
  const { notes, stops, marks } = musicOf(reading, telling);
  // Runs of palm mute may be cut and drawn out; what they cover is told with each note.
  const said = marks.filter(({ text }) => !text.startsWith('PM'));
  // Where within its note a bend is released follows the columns: only what begins is held to its time.
  const held = notes.map((note) => ({
    ...note,
    techniques: note.techniques.map((one) => one.replace(/ at \S+$/, '')),
  }));
  return { notes: held, stops, marks: said.map(({ text, onset }) => [drawn(text), onset]) };
}

/** All of it, with its bars and repeats. */
const all = (reading: SystemReading): unknown => [played(reading), musicOf(reading).bars];

const tabAndBar = fc.tuple(randomTab, fc.nat()).map(([text, seed]) => {
  const count = readings(text)[0]?.bars.length ?? 1;
  return { text, count, bar: seed % count };
});

/** Runs a law and sees to it that it was not refused everywhere. */
function law(check: (given: { text: string; count: number; bar: number }) => boolean): void {
  let held = 0;
  fc.assert(
    fc.property(tabAndBar, (given) => {
      if (check(given)) held++;
    }),
    { numRuns: RUNS },
  );
  assert(held > RUNS / 10, `it was put to the test ${held} times only`);
}

describe('column tools, whatever the system', () => {
  it('fit it to a wide line, or put in a column, without a change of anything that is played or written', () => {
    law(({ text, bar }) => {
      const before = all(whole(text));
      const fitted = after(text, bar, { action: 'fitWidth', width: 400 });
      if (fitted !== undefined) assert.deepEqual(all(whole(fitted)), before);
      const wider = after(text, bar, { action: 'insertColumn' });
      if (wider !== undefined) assert.deepEqual(all(whole(wider)), before);
      return fitted !== undefined || wider !== undefined;
    });
  });

  it('split it into two systems that say what its halves said, and join them again', () => {
    law(({ text, bar }) => {
      const split = after(text, bar, { action: 'splitSystem' });
      if (split === undefined) return false;
      const [first, second] = readings(split);
      assert(first && second);
      const before = whole(text);
      const { length } = first.bars;
      assert.deepEqual(played(first), played(before, { lastBar: length - 1 }));
      assert.deepEqual(played(second), played(before, { firstBar: length }));
      const joined = after(split, 0, { action: 'joinSystems' });
      if (joined !== undefined) assert.deepEqual(all(whole(joined)), all(before));
      return true;
    });
  });

  it('double a bar: what stood up to it stays, and the bar with all after it follows', () => {
    law(({ text, bar }) => {
      const twice = after(text, bar, { action: 'duplicateBars' });
      if (twice === undefined) return false;
      const before = whole(text);
      if (joinsBars(before)) return false;
      const now = whole(twice);
      assert.equal(now.bars.length, before.bars.length + 1);
      assert.deepEqual(played(now, { firstBar: bar + 1 }), played(before, { firstBar: bar }));
      assert.deepEqual(played(now, { lastBar: bar }), played(before, { lastBar: bar }));
      return true;
    });
  });

  it('put in an empty bar, and take it out again', () => {
    law(({ text, bar }) => {
      const longer = after(text, bar, { action: 'insertBar' });
      if (longer === undefined) return false;
      const again = after(longer, bar, { action: 'removeBars' });
      if (again === undefined) return false;
      assert.deepEqual(all(whole(again)), all(whole(text)));
      return true;
    });
  });

  it('copy a bar and paste it over itself without a change', () => {
    law(({ text, bar }) => {
      // A pickup is one only where it stands.
      if (whole(text).bars[bar]?.pickup) return false;
      const place = placeOf(text, bar);
      const copied = service.copyBars(service.open(text, settings), { start: place, end: place });
      if ('error' in copied) return false;
      const now = after(text, bar, { action: 'pasteOver', text: copied.text });
      if (now === undefined) return false;
      assert.deepEqual(played(whole(now)), played(whole(text)));
      return true;
    });
  });
});
