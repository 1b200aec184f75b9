import { asciiSigns } from '../../notation/lineParts';
import type { ParsedLine, RowLine } from '../../notation/parsedLine';
import type { Draft } from './formatSystem';

const OTHER_SPACES = /[\t\u00a0\u202f]/g;

/**
 * Look-alike dashes and bar lines of string lines as the plain signs, tabs and no-break spaces outside remarks as
 * spaces; each takes the column that it took. Spaces at the end of a line go.
 */
export function withPlainSigns({ lines }: Draft): readonly (readonly string[])[] {
  return [lines.map(plainText)];
}

function plainText(line: ParsedLine): string {
  if (line.kind === 'row') return plainBars(line).replace(OTHER_SPACES, ' ').trimEnd();
  if (line.kind !== 'string') return line.text;
  const { text, bodyStart, bodyEnd, remark, lookAlikes } = line;
  const before = text.slice(0, bodyStart).replace(OTHER_SPACES, ' ');
  const body = text.slice(bodyStart, bodyEnd);
  const plain = before + (lookAlikes.length > 0 ? asciiSigns(body) : body);
  if (!remark) return plain;
  return plain + text.slice(bodyEnd, remark.start).replace(OTHER_SPACES, ' ') + remark.text;
}

/** A row's text with plain bar lines; its marks stay as written. */
function plainBars({ text, bars }: RowLine): string {
  return bars.reduce(
    (result, bar) => result.slice(0, bar.start) + bar.text + result.slice(bar.start + bar.text.length),
    text,
  );
}
