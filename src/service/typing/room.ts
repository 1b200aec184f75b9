import type { ParsedLine, RowLine } from '../../notation/parsedLine';
import { isDash, offsetOf } from './stringCell';

/**
 * Puts an empty column into all string lines and rows of a system: dashes, and in rows a space, or what draws a row's
 * mark out. A word of a row that lies over the column stays whole; what follows it moves.
 * @param column from the first `|` on; what stood there stands one column later
 * @example addColumn(['D4 |0-2-|'].map(parseLine), 2) // ['D4 |0--2-|']
 */
export function addColumn(lines: readonly ParsedLine[], column: number): string[] {
  return lines.map((line) => {
    if (line.kind === 'string') {
      return column < line.width ? put(line.text, offsetOf(line, column), '-') : line.text;
    }
    return line.kind === 'row' && column < line.width ? widenRow(line, column) : line.text;
  });
}

function widenRow(line: RowLine, column: number): string {
  const { text, row } = line;
  const offset = offsetOf(line, column);
  const over = line.marks.find(({ start, end }) => start < offset && offset < end);
  if (!over || row === 'count') return put(text, offset, ' ');
  if (isDash(text[offset]) || isDash(text[offset - 1])) return put(text, offset, '-');
  // A run of dashes behind a word goes on covering its columns.
  return put(text, over.end, isDash(text[over.end - 1]) ? '-' : ' ');
}

/**
 * Takes an empty column out of all string lines and rows of a system.
 * @returns undefined when something stands in it
 */
export function removeColumn(lines: readonly ParsedLine[], column: number): string[] | undefined {
  const narrowed: string[] = [];
  for (const line of lines) {
    let text: string | undefined = line.text;
    if (line.kind === 'string' && column < line.width) {
      const offset = offsetOf(line, column);
      text = isDash(line.text[offset]) ? cut(line.text, offset) : undefined;
    } else if (line.kind === 'row' && column < line.width) {
      text = narrowRow(line, column);
    }
    if (text === undefined) return undefined;
    narrowed.push(text);
  }
  return narrowed;
}

function narrowRow(line: RowLine, column: number): string | undefined {
  const { text } = line;
  const offset = offsetOf(line, column);
  if (text[offset] === ' ') return cut(text, offset);
  const over = line.marks.find(({ start, end }) => start < offset && offset < end);
  if (!over) return undefined;
  if (isDash(text[offset])) return cut(text, offset);
  if (isDash(text[over.end - 1])) return cut(text, over.end - 1);
  // A word stays whole, and apart from what follows it.
  return /^ (?:[ |]|$)/.test(text.slice(over.end)) ? cut(text, over.end) : undefined;
}

function put(text: string, offset: number, sign: string): string {
  return text.slice(0, offset) + sign + text.slice(offset);
}

function cut(text: string, offset: number): string {
  return text.slice(0, offset) + text.slice(offset + 1);
}
