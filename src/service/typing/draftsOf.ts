import type { StringLine } from '../../notation/parsedLine';
import type { Draft } from './drafts';
import { cellAbout, columnOf, digitsAbout, isDash, isDigit } from './stringCell';

/** Ways to write something, the most wanted first; or a sentence why nothing can be written. */
export type Ways = readonly Draft[] | string;

/** The highest fret that the notation knows. */
const HIGHEST_FRET = 36;

/**
 * Ways to write a sign over what stands at an offset of a string line. A digit right behind a digit makes one number of
 * both; any other sign takes the place of the dash, sign or whole number there.
 */
export function waysToWrite(line: StringLine, offset: number, sign: string): Ways {
  const { before } = digitsAbout(line.text, offset);
  if (isDigit(sign) && before > 0) return waysToJoin(line, offset, sign);
  return isDigit(sign) ? waysToWriteDigit(line, offset, sign) : waysToWriteSign(line, offset, sign);
}

function waysToJoin(line: StringLine, offset: number, digit: string): Ways {
  const { text } = line;
  const { before, after } = digitsAbout(text, offset);
  const first = text.slice(offset - before, offset);
  // `<3.2` or `b7.5`: digits behind the point are no fret's.
  const isDecimal = /[<b]\d{1,2}\.\d+$/.test(text.slice(0, offset));
  if (!isDecimal) {
    if (before > 1)
      return 'A fret has at most two digits: leave a dash between it and the next one on the same string.';
    if (first === '0') return `An open string, 0, takes no second digit: leave a dash before the ${digit}.`;
    if (Number(first + digit) > HIGHEST_FRET)
      return `There is no fret ${first}${digit}: leave a dash between ${first} and ${digit}.`;
  }
  const column = columnOf(line, offset);
  const start = column - before;
  const own = { column, before: { start, end: column + after }, after: { start, end: column + 1 } };
  if (after > 0) return [{ ...own, signs: digit + '-'.repeat(after - 1) }];
  const roomy = { ...own, signs: digit, added: column };
  const isFree = isDash(text[offset]) && !isDigit(text[offset + 1]) && offset < line.bodyEnd;
  const inPlace = { ...own, before: { start, end: column + 1 }, signs: digit };
  if (!isFree) return [roomy];
  // In a harmonic or a bend's decimals the digits are no fret's: no column is theirs.
  return isDecimal || text[offset - before - 1] === '<' ? [inPlace, roomy] : [roomy, inPlace];
}

function waysToWriteDigit(line: StringLine, offset: number, digit: string): Ways {
  const { text } = line;
  const column = columnOf(line, offset);
  const length = Math.max(1, digitsAbout(text, offset).after);
  // Behind `7b7.` it makes an amount of what was a bend and a stop.
  const point = /[<b]\d{1,2}\.$/.exec(text.slice(0, offset))?.[0].length ?? 0;
  const own = {
    column,
    before: { start: column - point, end: column + length },
    after: { start: column - point, end: column + 1 },
  };
  if (isDigit(text[offset + length])) return [{ ...own, signs: `${digit}-`, added: column + 1 }];
  return overNumber(own, digit, length);
}

/** A sign in place of a number: the room of a second digit is given back where that moves nothing. */
function overNumber(own: Pick<Draft, 'column' | 'before' | 'after'>, sign: string, length: number): Draft[] {
  const inPlace = { ...own, signs: sign + '-'.repeat(length - 1) };
  return length === 2 ? [{ ...inPlace, removed: own.column + 1 }, inPlace] : [inPlace];
}

function waysToWriteSign(line: StringLine, offset: number, sign: string): Ways {
  const { before, after } = digitsAbout(line.text, offset);
  const length = before > 0 ? 1 : Math.max(1, after);
  const column = columnOf(line, offset);
  const cell = cellAbout(line, offset, offset + length);
  const own = {
    column,
    before: { start: columnOf(line, cell.start), end: columnOf(line, cell.end) },
    after: { start: columnOf(line, cell.start), end: columnOf(line, cell.end) },
  };
  if (before > 0 && after > 0 && sign === '-') return takeSecond(own);
  const ways = overNumber(own, sign, length);
  return sign === 'r' && length === 1 ? [...ways, ...waysToRelease(line, offset, own)] : ways;
}

/** A release takes the next number of its bar, also over dashes; where that is a note, it gets the bent fret behind it. */
function waysToRelease(
  { text }: StringLine,
  offset: number,
  own: Pick<Draft, 'column' | 'before' | 'after'>,
): Draft[] {
  const fret = /(\d{1,2})p?b[\d./]*$/.exec(text.slice(0, offset))?.[1];
  if (fret === undefined || !isDash(text[offset + 1]) || !isDash(text[offset + 2])) return [];
  const { column, before, after } = own;
  const signs = `r${fret}`;
  const room = fret.length > 1 ? { added: column + 2 } : {};
  return [{ column, signs, before, after: { ...after, end: after.end + signs.length }, ...room }];
}

/**
 * Ways to leave dashes in place of what stands at an offset: a whole number, its second digit alone behind the first, or
 * one sign. None when a dash stands there already.
 */
export function waysToClear(line: StringLine, offset: number): readonly Draft[] {
  if (isDash(line.text[offset])) return [];
  const ways = waysToWriteSign(line, offset, '-');
  return typeof ways === 'string' ? [] : ways;
}

function takeSecond(own: Pick<Draft, 'column' | 'before' | 'after'>): Draft[] {
  const inPlace = { ...own, signs: '-' };
  return [{ ...inPlace, removed: own.column }, inPlace];
}
