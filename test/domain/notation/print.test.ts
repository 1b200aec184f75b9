import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Document } from '../../../src/notation/document';
import { parseLine } from '../../../src/notation/parseLine';
import type { NotePlace } from '../../../src/notation/print/pieces';
import { rewriteSystem, type RewriteRequest } from '../../../src/notation/print/rewriteSystem';
import type { SystemReading } from '../../../src/notation/reading';
import { readSystem } from '../../../src/notation/systemReading';
import type { System } from '../../../src/notation/tabDocument';
import { demoSongs } from '../support/lines';
import { musicOf } from '../support/music';
import { randomTab } from '../support/randomTab';

const SETTINGS = {
  numRuns: Number(process.env['PEGBOX_RUNS'] ?? 400),
  seed: Number(process.env['PEGBOX_SEED'] ?? 20_261_125),
};

function placeAsItIs(system: System, index: number): NotePlace | undefined {
  const note = system.reading.notes[index];
  return (
    note && {
      string: note.string,
      fret: note.fret ?? 0,
      ...(note.touched === undefined ? {} : { touched: note.touched }),
    }
  );
}

function request(system: System, more: Partial<RewriteRequest> = {}): RewriteRequest {
  return {
    system,
    firstBar: 0,
    lastBar: system.reading.bars.length - 1,
    header: system.header,
    place: (index) => placeAsItIs(system, index),
    keepLabels: true,
    strings: system.reading.strings.map(({ number }) => number),
    position: system,
    ...more,
  };
}

function readAgain(lines: readonly string[], { header, position }: RewriteRequest): SystemReading {
  return readSystem(lines.map(parseLine), header, position);
}

function systemOf(text: string): System {
  const { systems } = new Document(text);
  assert.equal(systems.length, 1);
  return systems[0] ?? assert.fail();
}

let printed = 0;
let asked = 0;

function print(asking: RewriteRequest): string[] | undefined {
  asked += 1;
  const lines = rewriteSystem(asking);
  if (lines) printed += 1;
  return lines;
}

/** Writes both texts where they differ, since the reading alone does not show why. */
function assertSays(
  lines: readonly string[],
  asking: RewriteRequest,
  wanted: ReturnType<typeof musicOf>,
): void {
  const found = musicOf(readAgain(lines, asking));
  try {
    assert.deepEqual(found, wanted);
  } catch (error) {
    const was = asking.system.lines.map(({ text }) => text).join('\n');
    throw new Error(`${String(error)}\n--- was\n${was}\n--- printed\n${lines.join('\n')}`);
  }
}

describe('printing', function () {
  this.timeout(0);
  it('a system as it is says the same', () => {
    fc.assert(
      fc.property(randomTab, (text) => {
        const system = systemOf(text);
        const asking = request(system);
        const lines = print(asking);
        if (lines) assertSays(lines, asking, musicOf(system.reading));
      }),
      SETTINGS,
    );
  });

  it('the songs as they are writes the very same lines', () => {
    for (const song of demoSongs()) {
      for (const system of new Document(song).systems) {
        const lines = print(request(system));
        assert.deepEqual(
          lines,
          system.lines.map(({ text }) => text),
        );
      }
    }
  });
});
