import { secondDigitColumns } from '../../notation/systemReading';
import type { StringLine } from '../../notation/parsedLine';
import type { System } from '../../notation/tabDocument';
import { systemOf } from './putFrets';
import { saysTheSame } from './sameMusic';

/** Whether a line ends its system with a bar sign, so that what is typed behind it begins a bar. */
export function endsSystem({ lines }: System, line: StringLine): boolean {
  const last = line.tokens.at(-1);
  const strings = lines.filter((one) => one.kind === 'string');
  return last?.kind === 'bar' && line.tokens.length > 1 && strings.every(({ width }) => width === line.width);
}

/**
 * The system with an empty bar behind its last one, as long as that one.
 * @returns undefined where anything before it would be read in another way
 */
export function withNextBar(system: System): System | undefined {
  const strings = system.lines.filter((one) => one.kind === 'string');
  const last = system.reading.bars.at(-1);
  const width = strings[0]?.width;
  if (!last || width === undefined) return undefined;
  const seconds = secondDigitColumns(strings);
  let columns = 0;
  for (let column = last.startColumn; column < last.endColumn; column++) if (!seconds.has(column)) columns++;
  const texts = system.lines.map((line) => {
    if (line.kind === 'string')
      return `${line.text.slice(0, line.bodyEnd)}${'-'.repeat(columns)}|${line.text.slice(line.bodyEnd)}`;
    const closes = line.kind === 'row' && line.width === width && line.text.trimEnd().endsWith('|');
    return closes ? `${line.text.trimEnd()}${' '.repeat(columns)}|` : line.text;
  });
  const next = systemOf(system, texts);
  const nothing = { line: -1, before: { start: 0, end: 0 }, after: { start: 0, end: 0 } };
  const same =
    next.reading.bars.length === system.reading.bars.length + 1 && saysTheSame(system, next, nothing, true);
  return same ? next : undefined;
}
