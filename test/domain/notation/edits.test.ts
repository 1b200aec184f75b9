import assert from 'node:assert/strict';
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { Document } from '../../../src/notation/document';
import type { NoteReading } from '../../../src/notation/reading';
import { readSystem } from '../../../src/notation/systemReading';
import type { System } from '../../../src/notation/tabDocument';
import { demoSongs } from '../support/lines';
import { anyDocument, anyEdit, PlainText } from '../support/texts';

/** Everything that a document says. */
function whatItSays(document: Document): Record<string, unknown> {
  const { systems } = document;
  return {
    text: document.text(),
    lines: Array.from({ length: document.lineCount }, (_, i) => document.line(i)),
    systems: systems.map(({ firstLine, lines, header, section, firstInPart, firstInSection, reading }) => ({
      firstLine,
      lines,
      header,
      section,
      firstInPart,
      firstInSection,
      reading,
    })),
    sections: document.sections,
    groups: document.fieldGroups,
    parts: document.parts,
    nearMisses: document.nearMisses,
    headers: Array.from({ length: document.lineCount }, (_, i) => document.headerAt(i)),
    at: Array.from({ length: document.lineCount }, (_, i) => indexOf(systems, document.systemAt(i))),
    places: systems.map((system) => document.placeOf(system)),
    ringing: systems.map((system) =>
      document.ringingInto(system).map((ringing) => [indexOf(systems, ringing.system), ringing.note]),
    ),
    ends: systems.map((system) => system.reading.notes.map((note) => document.endOf(system, note))),
  };
}

function indexOf(systems: readonly System[], system: System | undefined): number {
  return system ? systems.indexOf(system) : -1;
}

function assertSame(edited: Document, fresh: Document): void {
  const [says, wanted] = [whatItSays(edited), whatItSays(fresh)];
  if (isDeepStrictEqual(says, wanted)) return;
  for (const key of Object.keys(wanted)) assert.deepEqual(says[key], wanted[key], `${key} differ`);
}

/** What rang into each system, to be compared after an edit. */
function ringingOf(document: Document): Map<System, { notes: readonly NoteReading[]; version: number }> {
  return new Map(
    document.systems.map((system) => [
      system,
      { notes: document.ringingInto(system).map(({ note }) => note), version: system.ringVersion },
    ]),
  );
}

describe('edits', () => {
  it('leave the tree that a fresh reading of the text gives', function () {
    this.timeout(0);
    fc.assert(
      fc.property(anyDocument, fc.array(anyEdit, { minLength: 20, maxLength: 20 }), (text, edits) => {
        const document = new Document(text);
        const plain = new PlainText(text);
        const history = [text];
        assertSame(document, new Document(text));
        for (const edit of edits) {
          const before = ringingOf(document);
          const placed = plain.placed(edit, history.at(-2) ?? text);
          if (edit.kind === 'undo') history.pop();
          document.edit([placed]);
          plain.apply(placed);
          if (edit.kind !== 'undo' || history.length === 0) history.push(plain.text);
          assert.equal(document.text(), plain.text);
          assertSame(document, new Document(plain.text));
          for (const system of document.systems) {
            const was = before.get(system);
            if (!was || system.ringVersion > was.version) continue;
            const now = document.ringingInto(system).map(({ note }) => note);
            assert.deepEqual(now, was.notes, 'what rings into a system changed unseen');
          }
        }
        // Readings are remembered by line and fields: what is remembered is what would be read.
        for (const system of document.systems) {
          assert.deepEqual(system.reading, readSystem(system.lines, system.header, system));
        }
      }),
      {
        numRuns: Number(process.env['PEGBOX_RUNS'] ?? 300),
        seed: Number(process.env['PEGBOX_SEED'] ?? 20_261_125),
      },
    );
  });

  it('of several places at once are taken one after the other', () => {
    fc.assert(
      fc.property(anyDocument, fc.array(anyEdit, { maxLength: 6 }), (text, edits) => {
        const plain = new PlainText(text);
        const placed = edits.map((edit) => {
          const one = plain.placed(edit, text);
          plain.apply(one);
          return one;
        });
        const document = new Document(text);
        document.edit(placed);
        assertSame(document, new Document(plain.text));
      }),
      { numRuns: 50, seed: 20_261_125 },
    );
  });

  it('of a setting leave the tree that a fresh reading with that setting gives', () => {
    const text = 'tuning: ferry\n\nD|0---|\nA|0---|\nG|----|\nD|----|\nA|----|\nD|0---|\n';
    const document = new Document(text);
    document.configure({ ferry: 'D A D G A D' });
    assertSame(document, new Document(text, { ferry: 'D A D G A D' }));
    document.configure({ ferry: 'C G D G B D' });
    assertSame(document, new Document(text, { ferry: 'C G D G B D' }));
  });
});

describe('typing inside a system', () => {
  it('leaves all other systems the same records', () => {
    for (const song of demoSongs()) {
      const document = new Document(song);
      document.systems.forEach((_, at) => {
        const before = [...document.systems];
        const system = document.systems[at];
        const inside = system?.lines.findIndex((line) => line.kind === 'string') ?? -1;
        const line = system?.lines[inside];
        assert.ok(system && line?.kind === 'string');
        const place = { line: system.firstLine + inside, character: line.bodyStart + 2 };
        document.edit([{ range: { start: place, end: place }, newText: '-' }]);
        document.systems.forEach((now, i) => {
          if (i === at) assert.notEqual(now, before[i]);
          else assert.equal(now, before[i]);
        });
        assert.equal(document.systems.length, before.length);
      });
      assertSame(document, new Document(document.text()));
    }
  });

  it('and a line of prose above them leave the others the same records', () => {
    for (const song of demoSongs()) {
      const document = new Document(song);
      const before = [...document.systems];
      const headings = document.sections.map(({ line }) => line);
      const [start, end] = [0, 0].map((line) => ({ line, character: 0 }));
      assert.ok(start && end);
      document.edit([{ range: { start, end }, newText: 'Sung on the quay.\n\n' }]);
      assert.equal(document.systems.length, before.length);
      document.systems.forEach((system, i) => assert.equal(system, before[i]));
      assert.deepEqual(
        document.sections.map(({ line }) => line),
        headings.map((line) => line + 2),
      );
    }
  });
});
