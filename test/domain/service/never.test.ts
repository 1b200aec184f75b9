import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { EditableDocument } from '../../../src/service/serviceApi';
import type { Place, Range } from '../../../src/service/records';
import { demoSongs, mutatedLine, seedLines } from '../support/lines';
import { randomFrom } from '../support/random';
import { service, settings } from './cursor';

const seeds = seedLines();

/** A demo song or loose lines with slips in them, and places inside and outside. */
const mutatedTexts = fc
  .record({
    seed: fc.nat(),
    song: fc.constantFrom(...demoSongs(), ''),
    slips: fc.integer({ min: 1, max: 12 }),
  })
  .map(({ seed, song, slips }) => {
    const random = randomFrom(seed);
    const lines = song.split('\n');
    for (let i = 0; i < slips; i++) {
      const at = random.below(lines.length + 1);
      if (random.chance(0.5)) lines.splice(at, 1, mutatedLine([lines[at] ?? '', ...seeds], random));
      else lines.splice(at, random.below(3), mutatedLine(seeds, random));
    }
    const places = Array.from({ length: 25 }, (): Place => ({
      line: random.below(lines.length + 3) - 1,
      character: random.below(90) - 1,
    }));
    return { text: lines.join('\n'), places };
  });

/** Every answer at one place; each is looked at, so that an empty helper cannot pass for the service. */
function askAll(document: EditableDocument, place: Place): void {
  const hover = service.hover(document, place, settings);
  if (hover) {
    assert.ok(hover.markdown.length > 0 && hover.markdown.length <= 100_000);
    assertInside(document, hover.range);
    assert.ok(!/undefined|NaN|\[object/.test(hover.markdown), hover.markdown);
  }
  for (const range of service.highlights(document, place)) assertInside(document, range);
  for (const item of service.completion(document, place, settings)) {
    const { start, end } = item.edit.range;
    assert.equal(start.line, place.line);
    assert.equal(end.line, place.line);
    assert.ok(start.character <= place.character && place.character <= end.character);
    assertInside(document, item.edit.range);
  }
  service.tuningChoices(document, place, settings);
}

function assertInside(document: EditableDocument, { start, end }: Range): void {
  for (const { line, character } of [start, end]) {
    assert.ok(line >= 0 && line < document.lineCount, `line ${line} of ${document.lineCount}`);
    assert.ok(character >= 0 && character <= document.line(line).text.length, `character ${character}`);
  }
  assert.ok(start.line < end.line || (start.line === end.line && start.character <= end.character));
}

describe('no text and no place makes a feature throw', () => {
  it('hover, highlights, completion and pick lists', () => {
    fc.assert(
      fc.property(mutatedTexts, ({ text, places }) => {
        const document = service.open(text, settings);
        for (const place of places) {
          const line = Math.max(0, Math.min(place.line, document.lineCount - 1));
          const length = document.line(line).text.length;
          const inside = { line, character: Math.max(0, Math.min(place.character, length)) };
          askAll(document, inside);
          // The server cuts places to the text; whoever does not must not fall either.
          if (place.line === inside.line && place.character === inside.character) continue;
          service.hover(document, place, settings);
          service.highlights(document, place);
          service.completion(document, place, settings);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('outline, folding, hints, tokens and notes, each well formed', () => {
    fc.assert(
      fc.property(mutatedTexts, ({ text }) => {
        const document = service.open(text, settings);
        assertOutline(document);
        for (const { startLine, endLine } of service.folding(document)) {
          assert.ok(startLine < endLine && endLine < document.lineCount);
        }
        const all: Range = {
          start: { line: 0, character: 0 },
          end: { line: document.lineCount, character: 0 },
        };
        for (const { place } of service.inlayHints(document, all)) {
          assert.equal(document.systemAt(place.line), undefined);
        }
        let before = { line: 0, end: 0 };
        for (const { line, start, length } of service.semanticTokens(document)) {
          assert.ok(
            line > before.line || (line === before.line && start >= before.end),
            `token at ${line}:${start}`,
          );
          assert.ok(length > 0 && start + length <= document.line(line).text.length);
          before = { line, end: start + length };
        }
        for (const note of service.notes(document)) {
          assert.ok(note.onset >= 0 && note.duration >= 0 && Number.isFinite(note.duration));
        }
      }),
      { numRuns: 300 },
    );
  });

  it('questions without a document', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), fc.array(fc.string()), (value, name, notes) => {
        for (const answer of [
          service.tuning(value, undefined, settings),
          service.tuning(value, name, settings),
          service.chord(notes, undefined, undefined, settings),
          service.chord(['D2', ...notes], name, value, settings),
        ]) {
          if ('error' in answer) assert.match(answer.error, /\S.*[.!?]$/s);
        }
      }),
      { numRuns: 500 },
    );
  });
});

/** Names are not empty, selections and children lie inside their range (Language Server Protocol, DocumentSymbol). */
function assertOutline(document: EditableDocument): void {
  const check = (items: ReturnType<typeof service.outline>, outer: Range | undefined): void => {
    for (const { name, range, selection, children } of items) {
      assert.notEqual(name.trim(), '');
      assertInside(document, range);
      assert.ok(isWithin(selection, range));
      if (outer) assert.ok(isWithin(range, outer), `${name} lies outside`);
      check(children, range);
    }
  };
  check(service.outline(document), undefined);
}

function isWithin(inner: Range, outer: Range): boolean {
  return !isBefore(inner.start, outer.start) && !isBefore(outer.end, inner.end);
}

function isBefore(a: Place, b: Place): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}
