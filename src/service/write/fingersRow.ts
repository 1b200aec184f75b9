import { parseLine } from '../../notation/parseLine';
import { setUnder } from '../../notation/print/rewriteSystem';
import type { Header } from '../../notation/header';
import { readSystem } from '../../notation/systemReading';
import type { Finger } from '../../playing/hand/handSearch';

/**
 * The lines of a system under a row that names the finger of each note; a count row stays on top.
 * @param next the finger of the next note in the order of time; notes begin one at a time
 */
export function withFingers(
  lines: readonly string[],
  next: () => Finger | undefined,
  header: Header,
): string[] {
  const count = lines.find((line) => isCount(line));
  const rest = lines.filter((line) => line !== count);
  const position = { firstInPart: false, firstInSection: false };
  const { notes, bars } = readSystem(lines.map(parseLine), header, position);
  const marks = notes.map(({ column }) => ({ column, text: String(next() ?? '') }));
  const signs = [0, ...bars.map(({ endColumn }) => endColumn)].map((column) => ({ column, text: '|' }));
  const body = [...marks, ...signs]
    .sort((a, b) => a.column - b.column)
    .reduce((text, mark) => text.padEnd(mark.column) + mark.text, '');
  const named = setUnder('fingers', body, rest);
  if (count === undefined) return named;
  const parsed = parseLine(count);
  return parsed.kind === 'row' ? setUnder('count', count.slice(parsed.bodyStart), named) : named;
}

function isCount(line: string): boolean {
  const parsed = parseLine(line);
  return parsed.kind === 'row' && parsed.row === 'count';
}
