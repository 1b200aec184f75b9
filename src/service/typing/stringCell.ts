import { columnsFrom } from '../../notation/columns';
import type { StringLine, TextSpan, Token } from '../../notation/parsedLine';

/** The UTF-16 offset of a column of a string line or row; one past its text gives as many offsets more. */
export function offsetOf(
  { text, bodyStart }: Pick<StringLine, 'text' | 'bodyStart'>,
  column: number,
): number {
  const columnAt = columnsFrom(text, bodyStart);
  const guess = bodyStart + column;
  if (guess <= text.length && columnAt(guess) === column) return guess;
  for (let offset = bodyStart; offset < text.length; offset++) if (columnAt(offset) >= column) return offset;
  return text.length + Math.max(0, column - columnAt(text.length));
}

/** The column, from the first `|` on, of an offset of a string line. */
export function columnOf({ text, bodyStart }: StringLine, offset: number): number {
  return columnsFrom(text, bodyStart)(offset);
}

export const isDigit = (sign: string | undefined): boolean => sign !== undefined && /^[0-9]$/.test(sign);

/** A dash, or what reads as one. */
export const isDash = (sign: string | undefined): boolean => sign !== undefined && /^[-–—─−]$/.test(sign);

/** The bar sign that has a character. */
export function barAt({ tokens }: StringLine, offset: number): Token | undefined {
  return tokens.find(({ kind, start, end }) => kind === 'bar' && start <= offset && offset < end);
}

/** The digits without a gap about an offset: those before it, and those from it on. */
export function digitsAbout(
  text: string,
  offset: number,
): { readonly before: number; readonly after: number } {
  let before = 0;
  while (isDigit(text[offset - before - 1])) before++;
  let after = 0;
  while (isDigit(text[offset + after])) after++;
  return { before, after };
}

/** Everything that touches a stretch of a string line: up to the next dash or bar sign on both sides. */
export function cellAbout(line: StringLine, start: number, end: number): TextSpan {
  const ends = (offset: number): boolean =>
    offset <= line.bodyStart ||
    offset >= line.bodyEnd ||
    isDash(line.text[offset]) ||
    barAt(line, offset) !== undefined;
  let from = start;
  while (!ends(from - 1)) from--;
  let to = end;
  while (!ends(to)) to++;
  return { start: from, end: to };
}
