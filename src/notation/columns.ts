import { eastAsianWidth } from 'get-east-asian-width';

/**
 * A column is one character as a reader sees it: combining and zero-width marks take none, East Asian wide ones
 * two (Unicode UAX #11), everything else one.
 */
export type ColumnAt = (offset: number) => number;

const NO_WIDTH = /^[\p{Mn}\p{Me}\p{Cf}]$/u;
// Printable ASCII: every UTF-16 unit is one column, which is nearly every line of tab there is.
const PLAIN = /^[\x20-\x7e]*$/;

/**
 * Columns of a line, counted from the character at `origin` (column 0).
 * @example columnsFrom('é|-', 1)(2) // 1
 */
export function columnsFrom(text: string, origin: number): ColumnAt {
  if (PLAIN.test(text)) return (offset) => offset - origin;
  const columns = new Int32Array(text.length + 1);
  let column = 0;
  let offset = 0;
  for (const character of text) {
    columns.fill(column, offset, offset + character.length);
    offset += character.length;
    column += widthOf(character);
  }
  columns[text.length] = column;
  const zero = columns[origin] ?? 0;
  return (at) => (columns[Math.min(at, text.length)] ?? 0) - zero;
}

/** Columns of one character (one code point): 0, 1 or 2. */
export function widthOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x300) return code === 0xad ? 0 : 1;
  if (NO_WIDTH.test(character)) return 0;
  return eastAsianWidth(code);
}

/** Columns of a text. */
export function widthOfText(text: string): number {
  if (PLAIN.test(text)) return text.length;
  let width = 0;
  for (const character of text) width += widthOf(character);
  return width;
}
