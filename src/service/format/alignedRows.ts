import { rowOffsetAt } from '../../checks/support/edits';
import { straightenRow } from '../../checks/support/barSigns';
import type { ParsedLine, RowLine } from '../../notation/parsedLine';
import type { Draft } from './formatSystem';
import { edited } from './straightSigns';

/** A bar sign of the strings by its columns. */
interface Sign {
  readonly first: number;
  readonly last: number;
}

/**
 * Rows over their strings: bar lines of a row stand over the bar signs, where only spaces are in the way, and a row that
 * has some beside its first gets the others. No mark moves.
 */
export function rowsAligned({ lines, reading }: Draft): readonly (readonly string[])[] {
  // Most systems have no row with more than the bar line it begins with.
  if (!lines.some((line) => line.kind === 'row' && line.bars.length > 1)) return [];
  const signs = signsOf(lines);
  if (signs.length === 0) return [];
  const astray = new Set(
    reading.problems.filter(({ kind }) => kind === 'row-bar-out-of-line').map(({ line }) => line),
  );
  const texts = lines.map((line, i) => {
    if (line.kind !== 'row' || line.bars.length < 2) return line.text;
    if (astray.has(i))
      return edited(
        line,
        straightenRow(
          line,
          i,
          signs.map(({ first }) => first),
        ),
      ).trimEnd();
    return completed(line, signs);
  });
  const moved = lines.map((line, i) =>
    line.kind === 'row' && astray.has(i) ? withMarks(line, signs) : texts[i],
  );
  // What stands behind a bar line moves along where its time allows; else the bar lines move alone.
  return [
    moved.map((text, i) => text ?? texts[i] ?? ''),
    texts,
    ...lines.map((_, i) => lines.map(({ text }, k) => (k === i ? (texts[k] ?? text) : text))),
  ];
}

/** The bar signs that the strings agree on, from the first string line that has all columns. */
function signsOf(lines: readonly ParsedLine[]): readonly Sign[] {
  const strings = lines.flatMap((line) => (line.kind === 'string' ? [line] : []));
  const width = Math.max(0, ...strings.map((line) => line.width));
  const full = strings.find((line) => line.width === width);
  return (full?.tokens ?? [])
    .filter(({ kind }) => kind === 'bar')
    .map(({ column, width: wide }) => ({ first: column, last: column + wide - 1 }));
}

/** A row with a bar line over each sign where it has none and nothing else stands. */
function completed(row: RowLine, signs: readonly Sign[]): string {
  const missing = signs.filter(
    ({ first, last }) => !row.bars.some(({ column, width }) => column <= last && column + width > first),
  );
  return missing.reduce((text, { first }) => {
    const at = rowOffsetAt({ ...row, text }, first);
    if (at === undefined) return text;
    const long = text.padEnd(at + 1);
    // A bar line right against a mark reads badly, and a mark of two dashes covers what it touches.
    return long.slice(at - 1, at + 2).trim() === '' ? `${long.slice(0, at)}|${long.slice(at + 1)}` : text;
  }, row.text);
}

/** A row whose bar lines, one after the other, are moved to the signs together with what follows each of them. */
function withMarks(row: RowLine, signs: readonly Sign[]): string | undefined {
  if (row.bars.length > signs.length) return undefined;
  let { text } = row;
  let shift = 0;
  for (const [i, bar] of row.bars.entries()) {
    const more = (signs[i]?.first ?? 0) - bar.column - shift;
    const at = bar.start + shift;
    if (more < 0 && text.slice(at + more, at).trim() !== '') return undefined;
    text = text.slice(0, at + Math.min(0, more)) + ' '.repeat(Math.max(0, more)) + text.slice(at);
    shift += more;
  }
  return text;
}
