import { expect } from 'chai';
import fc from 'fast-check';
import { Document } from '../../../../src/notation/document';
import { formatFraction } from '../../../../src/music/fraction';
import type { Cursor } from '../../../../src/service/typing/typedKey';
import { typeOver } from '../../../../src/service/typing/typeOver';

/* Whatever is typed on one string, what the other strings play keeps its string, fret, pitch and exact onset. */

const COLUMNS = 16;
const KEYS = [...'0123456789hptrbx/\\~().<>-=|', 'backspace', 'delete'] as const;

const cell = fc.oneof(
  { weight: 5, arbitrary: fc.constant('-') },
  { weight: 2, arbitrary: fc.constantFrom('0', '2', '7', 'x') },
  { weight: 1, arbitrary: fc.constantFrom('10', '12', '5h7', '7b9', '(5)', '<12>', '5/7', '.') },
);

/** A line of bars of so many columns, filled with cells that have a dash behind them. */
const stringLine = (bars: number): fc.Arbitrary<string> =>
  fc
    .array(fc.array(cell, { minLength: 8, maxLength: 8 }), { minLength: bars, maxLength: bars })
    .map((all) =>
      all
        .map((cells) =>
          cells
            .map((own) => `${own}-`)
            .join('')
            .slice(0, COLUMNS)
            .padEnd(COLUMNS, '-'),
        )
        .join('|'),
    )
    // A cell that is cut at the bar's end would be another one.
    .map((line) => line.replace(/[^-|]{2,}(?=\||$)/g, (cut) => '-'.repeat(cut.length)));

const system = fc
  .integer({ min: 1, max: 2 })
  .chain((bars) =>
    fc.tuple(fc.array(stringLine(bars), { minLength: 6, maxLength: 6 }), fc.boolean(), fc.constant(bars)),
  )
  .map(([lines, isCounted, bars]) => {
    const strings = ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'].map((label, i) => `${label}    |${lines[i] ?? ''}|`);
    const count = `count |${'1 & 2 & 3 & 4 & |'.repeat(bars)}`;
    return [...(isCounted ? [count] : []), ...strings].join('\n');
  });

function playedElsewhere(document: Document, string: number): string[] {
  const [own] = document.systems;
  return (own?.reading.notes ?? [])
    .filter((note) => note.string !== string)
    .map(
      ({ string: on, kind, fret, touched, pitches, onset }) =>
        `${on} ${kind} ${fret ?? ''} ${touched ?? ''} ${pitches.map(({ midi }) => midi).join()} at ${formatFraction(onset)}`,
    )
    .sort();
}

describe('laws of typing over the staff', () => {
  it('what other strings play stays as it is, and every edit reads as the text it leaves', () => {
    fc.assert(
      fc.property(
        system,
        fc.nat({ max: 5 }),
        fc.nat({ max: COLUMNS - 1 }),
        fc.array(fc.constantFrom(...KEYS), { minLength: 1, maxLength: 14 }),
        (text, row, column, keys) => {
          const document = new Document(text);
          const [first] = document.systems;
          const placed = first?.reading.strings[row];
          const line = placed && document.line(placed.line);
          if (!placed || line?.kind !== 'string') throw new Error(`No system:\n${text}`);
          const before = playedElsewhere(document, placed.number);
          const place = { line: placed.line, character: line.bodyStart + 1 + column };
          let cursors: readonly Cursor[] = [{ anchor: place, active: place }];
          for (const key of keys) {
            const last = cursors[0]?.active;
            const done = typeOver(
              document,
              cursors,
              key === 'backspace' || key === 'delete' ? key : { text: key },
            );
            // Only behind the end of the system.
            if (done.kind === 'text') {
              const end = document.line(last?.line ?? 0);
              expect(last?.character).to.equal(end.kind === 'string' ? end.bodyEnd : -1);
              break;
            }
            document.edit([...done.edits].reverse());
            cursors = done.cursors;
            expect(playedElsewhere(document, placed.number), `${key} in\n${document.text()}`).to.deep.equal(
              before,
            );
            expect(document.systems.length).to.equal(1);
          }
          expect(new Document(document.text()).systems[0]?.reading).to.deep.equal(
            document.systems[0]?.reading,
          );
        },
      ),
      { numRuns: Number(process.env['PEGBOX_RUNS'] ?? 150) },
    );
  });
});
