import assert from 'node:assert/strict';
import type { OutlineItem } from '../../../src/service/records';
import { openAt, service, settings } from './cursor';

const DUO = `title: Two Boats

[Verse]
part: low
tuning: standard

E2 |0---|0---|

part: high
tuning: high strung

E4 |3---|

[Chorus] x2
part: low

E2 |3---|

part: high

E4 |0---|
`;

const SOLO = `tuning: DADGAD
key: D

E2 |0-|

[Verse]
A line for the reader.

count |1 & |
D2    |0---|2---|

[Empty]
`;

/** One line an item: kind, name, detail and the lines of its range, indented by depth. */
function sketch(items: readonly OutlineItem[], depth = 0): readonly string[] {
  return items.flatMap(({ kind, name, detail, range, selection, children }) => [
    `${'  '.repeat(depth)}${kind} ${name}${detail === '' ? '' : ` (${detail})`} ${range.start.line}–${range.end.line} at ${selection.start.line}`,
    ...sketch(children, depth + 1),
  ]);
}

describe('finding the way', () => {
  it('outline without parts: sections and systems', () => {
    assert.deepEqual(sketch(service.outline(service.open(SOLO, settings))), [
      'system Bar 1 3–3 at 3',
      'section Verse 5–9 at 5',
      '  system Bars 2–3 8–9 at 8',
      'section Empty 11–11 at 11',
    ]);
  });

  it('outline of parts that interleave: part, section, system', () => {
    assert.deepEqual(sketch(service.outline(service.open(DUO, settings))), [
      'part low (standard) 3–16 at 3',
      '  section Verse 6–6 at 6',
      '    system Bars 1–2 6–6 at 6',
      '  section Chorus (x2) 16–16 at 16',
      '    system Bar 3 16–16 at 16',
      'part high (high strung) 8–20 at 8',
      '  section Verse 11–11 at 11',
      '    system Bar 1 11–11 at 11',
      '  section Chorus (x2) 20–20 at 20',
      '    system Bar 2 20–20 at 20',
    ]);
  });

  it('a pickup is bar 0', () => {
    const text = 'count |4 |1 2 3 4 |\nE2    |0-|0-0-0-0-|\n';
    assert.deepEqual(sketch(service.outline(service.open(text, settings))), ['system Bars 0–1 0–1 at 0']);
  });

  it('folding: header, sections, parts and systems, nested', () => {
    const folds = (text: string): readonly string[] =>
      service
        .folding(service.open(text, settings))
        .map(({ startLine, endLine }) => `${startLine}–${endLine}`);
    assert.deepEqual(folds(SOLO), ['0–1', '5–9', '8–9']);
    assert.deepEqual(folds(DUO), ['2–11', '3–6', '8–11', '13–20', '14–16', '18–20']);
  });

  it('folding where each part has its own sections', () => {
    const text = 'part: A\n\n[Verse]\n\nE2 |0-|\n\npart: B\n\n[Verse]\n\nE2 |0-|\n';
    const folds = service.folding(service.open(text, settings));
    assert.deepEqual(
      folds.map(({ startLine, endLine }) => `${startLine}–${endLine}`),
      ['0–4', '2–4', '6–10', '8–10'],
    );
  });

  /** The highlighted texts with their places. */
  const lit = (marked: string): readonly string[] => {
    const { document, place } = openAt(marked);
    return service
      .highlights(document, place)
      .map(
        ({ start, end }) =>
          `${start.line}:${start.character} ${document.line(start.line).text.slice(start.character, end.character)}`,
      );
  };

  it('highlights every place of the part that sounds the pitch, whatever the string', () => {
    const text = `E4 |0---0-|
B3 |5-<|>5---|
G3 |9-(9)-|
D3 |------|
A2 |------|
E2 |<5>---|

part: other

E4 |0-----|
`;
    assert.deepEqual(lit(text), ['0:4 0', '0:8 0', '1:4 5', '1:6 5', '2:4 9', '2:6 (9)', '5:4 <5>']);
  });

  it('highlights courses by any of their pitches, and nothing for a dash or an x', () => {
    const text = `instrument: 12-string guitar

E4/E4 |------|
B3/B3 |------|
G3/G4 |------|
D3/D4 |2-----|
A2/A3 |------|
E2/E3 |<|>0-----|
`;
    assert.deepEqual(lit(text), ['5:7 2', '7:7 0']);
    assert.deepEqual(lit('E4 |0-<|>--|'), []);
    assert.deepEqual(lit('E4 |0-<|>x-|'), []);
  });

  it('a cursor right behind a fret is at it', () => {
    assert.deepEqual(lit('E4 |12<|>-12-|'), ['0:4 12', '0:7 12']);
  });

  it('in a long piece keeps the thousand places nearest to the cursor', () => {
    const system = 'E4 |0-0-|0-0-|\n\n';
    const { document } = openAt(`${system.repeat(1000)}<|>`);
    const ranges = service.highlights(document, { line: 1000, character: 4 });
    assert.equal(ranges.length, 1000);
    assert.ok(ranges.every(({ start }) => Math.abs(start.line - 1000) <= 252));
  });
});
