import assert from 'node:assert/strict';
import type { System } from '../../../src/notation/tabDocument';
import { service, settings } from './cursor';

const SYSTEM = `E4 |0---2---|--3-----|
B3 |--1-----|3-------|
G3 |0-------|--0-----|
D3 |----2---|----0---|
A2 |3-------|0-------|
E2 |--------|--3-----|

`;

/** Tells which systems of a long piece are read while something runs. */
function watched(text: string): {
  readonly document: ReturnType<typeof service.open>;
  readonly readBy: (run: () => void) => ReadonlySet<System>;
} {
  const document = service.open(text, settings);
  const read = new Set<System>();
  for (const system of document.systems) {
    const { reading } = system;
    Object.defineProperty(system, 'reading', {
      get: () => {
        read.add(system);
        return reading;
      },
    });
  }
  return {
    document,
    readBy: (run) => {
      read.clear();
      run();
      return new Set(read);
    },
  };
}

describe('what an answer costs in a long piece', () => {
  const { document, readBy } = watched(SYSTEM.repeat(500));
  const place = { line: 7 * 400, character: 8 };

  it('a hover reads the bars above it once, and then its own system and what rings into it', () => {
    const first = readBy(() => assert.ok(service.hover(document, place, settings)));
    assert.ok(first.size >= 400);
    const again = readBy(() => assert.ok(service.hover(document, place, settings)));
    assert.ok(again.size <= 3, `${again.size} systems are read`);
    const elsewhere = readBy(() => assert.ok(service.hover(document, { ...place, line: 7 * 100 }, settings)));
    assert.ok(elsewhere.size <= 3, `${elsewhere.size} systems are read`);
  });

  it('tokens read the systems that are asked for', () => {
    const range = { start: { line: 70, character: 0 }, end: { line: 83, character: 0 } };
    assert.equal(readBy(() => assert.ok(service.semanticTokens(document, range).length > 0)).size, 2);
  });

  it('completion of a row reads the systems beside it', () => {
    const read = readBy(() =>
      assert.ok(service.completion(document, { line: 6, character: 0 }, settings).length > 0),
    );
    assert.ok(read.size <= 2, `${read.size} systems are read`);
  });
});
