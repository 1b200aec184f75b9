import { widthOfText } from '../../notation/columns';
import { parseLine } from '../../notation/parseLine';
import type { ParsedLine, RowLine, StringLine } from '../../notation/parsedLine';
import { stretches } from '../../notation/print/signs';
import { add, fraction, multiply, subtract, type Fraction } from '../../music/fraction';
import type { System } from '../../notation/tabDocument';

/** The rows of a system with every column of its bars drawn out to some columns, as room for what is to be written. */
export interface StretchedSystem {
  /** Rows and comments, in their order. */
  readonly lines: readonly ParsedLine[];
  /** For each of `lines` its index in the system. */
  readonly from: readonly number[];
  /** What a string line is to begin with: bar signs, and dashes between them. */
  readonly body: string;
  /** The new column of an old one. */
  readonly at: (column: number) => number;
  /** Quarter notes from the system's start, by new column. */
  readonly times: readonly Fraction[];
}

/**
 * @param by how many columns each column of a bar becomes, 1 or more
 * @param keeps whether a row stays
 */
export function stretchedSystem(
  system: System,
  by: number,
  keeps: (row: RowLine) => boolean,
): StretchedSystem {
  const { bars, columnTimes, length } = system.reading;
  const width = bars.at(-1)?.closeSign
    ? (bars.at(-1)?.endColumn ?? 0) + (bars.at(-1)?.closeSign.length ?? 0)
    : (bars.at(-1)?.endColumn ?? 0);
  const columns: number[] = [];
  const times: Fraction[] = [];
  let next = 0;
  for (let column = 0; column < width; column++) {
    columns.push(next);
    const inBar = bars.some(({ startColumn, endColumn }) => column >= startColumn && column < endColumn);
    const [from, to] = [columnTimes[column] ?? length, columnTimes[column + 1] ?? length];
    const steps = inBar ? by : 1;
    for (let k = 0; k < steps; k++) times.push(add(from, multiply(subtract(to, from), fraction(k, steps))));
    next += steps;
  }
  times.push(length);
  const at = (column: number): number =>
    column < columns.length ? (columns[Math.max(0, column)] ?? 0) : next + column - columns.length;
  const kept = system.lines.flatMap((line, index): { line: ParsedLine; index: number }[] => {
    if (line.kind === 'string' || (line.kind === 'row' && !keeps(line))) return [];
    return [{ line: line.kind === 'row' && by > 1 ? stretchedRow(line, at) : line, index }];
  });
  return {
    lines: kept.map(({ line }) => line),
    from: kept.map(({ index }) => index),
    body: bodyOf(system, at, next),
    at,
    times,
  };
}

function stretchedRow(line: RowLine, at: (column: number) => number): ParsedLine {
  const body: string[] = [];
  const write = (start: number, text: string): void => {
    while (body.length < start) body.push(' ');
    [...text].forEach((character, k) => (body[start + k] = character));
  };
  for (const { column, text } of line.bars) write(at(column), text);
  for (const { column, width, text } of line.marks) {
    const covers = line.row === 'palm mute' || stretches(text);
    write(at(column), covers ? text.padEnd(at(column + width) - at(column), '-') : text);
  }
  return parseLine(line.text.slice(0, line.bodyStart) + body.join(''));
}

/** Signs as the bars have them, or as a string line that is there already writes them. */
function bodyOf(system: System, at: (column: number) => number, width: number): string {
  const body = Array.from({ length: Math.max(1, width) }, () => '-');
  const write = (start: number, text: string): void => {
    [...text].forEach((character, k) => (body[start + k] = character));
  };
  const own = system.lines.find((line): line is StringLine => line.kind === 'string');
  if (own) {
    for (const token of own.tokens) if (token.kind === 'bar') write(at(token.column), token.text);
    return body.join('').slice(0, Math.max(1, width));
  }
  const { bars } = system.reading;
  bars.forEach((bar, i) => {
    const start = bars[i - 1]?.endColumn ?? 0;
    write(at(start), bar.openSign.padEnd(bar.startColumn - start, '|'));
  });
  const last = bars.at(-1);
  // Where no row closes the last bar, the strings do.
  if (last) write(at(last.endColumn), last.closeSign || '|');
  return body.join('');
}

/** Columns that a label takes at most. */
export function labelWidth(labels: readonly string[]): number {
  return Math.max(0, ...labels.map(widthOfText));
}
