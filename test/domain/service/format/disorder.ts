import fc from 'fast-check';
import { randomTab } from '../../support/randomTab';

/*
 * Systems as they look after a hurried hand: labels at any distance, rows out of line, look-alikes, lines that end early
 * or late, bar signs a column off, tabs, no-break spaces, remarks, every kind of line end.
 */

const DASHES = ['–', '—', '─', '−'];
const BARS = ['│', '┃', '¦'];

interface Disorder {
  /** Which lines, by a number for each. */
  readonly on: readonly number[];
  readonly at: readonly number[];
  readonly kinds: readonly number[];
  readonly end: string;
}

const disorder: fc.Arbitrary<Disorder> = fc.record({
  on: fc.array(fc.nat(40), { minLength: 1, maxLength: 12 }),
  at: fc.array(fc.nat(200), { minLength: 12, maxLength: 12 }),
  kinds: fc.array(fc.nat(9), { minLength: 12, maxLength: 12 }),
  end: fc.constantFrom('\n', '\n', '\r\n', '\r'),
});

/** A document with one system in disorder; it may have changed its sense by that, which is no matter. */
export const disorderedTab: fc.Arbitrary<string> = fc
  .tuple(randomTab, disorder)
  .map(([text, { on, at, kinds, end }]) => {
    const lines = text.split('\n');
    const first = lines.findIndex((line) => line === '') + 1;
    on.forEach((number, i) => {
      const line = first + (number % Math.max(1, lines.length - first - 1));
      lines[line] = disturbed(lines[line] ?? '', kinds[i] ?? 0, at[i] ?? 0);
    });
    return lines.join(end);
  });

function disturbed(line: string, kind: number, at: number): string {
  const bar = line.search(/[|│┃¦]/);
  if (bar < 0) return line;
  const dashes = [...line.matchAll(/-/g)].map(({ index }) => index).filter((index) => index > bar);
  const bars = [...line.matchAll(/\|/g)].map(({ index }) => index).filter((index) => index > bar);
  const dash = dashes[at % Math.max(1, dashes.length)];
  const sign = bars[at % Math.max(1, bars.length)];
  switch (kind) {
    case 0: // the label at another distance
      return line.slice(0, bar).trimEnd() + ' '.repeat(at % 5) + line.slice(bar);
    case 1: // indented
      return ' '.repeat(at % 4) + line;
    case 2:
      return dash === undefined ? line : replaced(line, dash, 1, DASHES[at % DASHES.length] ?? '–');
    case 3:
      return replaced(line, sign ?? bar, 1, BARS[at % BARS.length] ?? '│');
    case 4: // ends early
      return line.slice(0, Math.max(bar + 1, line.length - (at % 9)));
    case 5: // a dash too many before a bar sign
      return sign === undefined ? line : replaced(line, sign, 0, '-');
    case 6: // a dash too few
      return sign !== undefined && line[sign - 1] === '-' ? replaced(line, sign - 1, 1, '') : line;
    case 7: // ends late
      return `${line}${'-'.repeat(at % 4)}${at % 2 ? '|' : ''}`;
    case 8:
      return at % 2 ? replaced(line, bar, 0, at % 3 ? '\t' : '\u00a0') : `${line}  twice  `;
    default: // a bar sign left out
      return sign === undefined ? line : replaced(line, sign, 1, '-');
  }
}

function replaced(line: string, at: number, length: number, text: string): string {
  return line.slice(0, at) + text + line.slice(at + length);
}
