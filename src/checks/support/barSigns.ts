import { keyOf } from '../../notation/bars';
import type { RowLine, StringLine } from '../../notation/parsedLine';
import type { Problem } from '../../notation/reading';
import { numbersFact, type LineEdit } from '../check';
import { offsetAt, rowOffsetAt } from './edits';

/**
 * A string line with its bar signs where the other lines have them, by dashes put in or taken away; undefined where a
 * note is in the way.
 * @param problem what the reading tells of it, `bar-out-of-line`
 */
export function straightenLine(string: StringLine, problem: Problem): readonly LineEdit[] | undefined {
  const { line } = problem;
  const { tokens } = string;
  const signs = tokens.filter((token) => token.kind === 'bar');
  const own = signs.map(keyOf);
  const keys = numbersFact(problem, 'keys');
  if (own.length !== keys.length) {
    const strays = new Set(numbersFact(problem, 'strays'));
    if (own.length - strays.size !== keys.length) return undefined;
    return signs
      .filter((sign) => strays.has(keyOf(sign)))
      .map(({ start, end }) => ({ line, start, end, text: '-'.repeat(end - start) }));
  }
  const edits: LineEdit[] = [];
  for (let i = 1; i < signs.length; i++) {
    const sign = signs[i];
    if (!sign) continue;
    const more = (keys[i] ?? 0) - (keys[i - 1] ?? 0) - ((own[i] ?? 0) - (own[i - 1] ?? 0));
    const before = tokens[tokens.indexOf(sign) - 1];
    if (more > 0) edits.push({ line, start: sign.start, end: sign.start, text: '-'.repeat(more) });
    if (more < 0) {
      if (before?.kind !== 'dash' || before.width < -more) return undefined;
      edits.push({ line, start: sign.start + more, end: sign.start, text: '' });
    }
  }
  return edits;
}

/** Bar signs over the dashes that stand in columns; undefined where something else stands there. */
export function writeSigns(
  string: StringLine,
  line: number,
  columns: readonly number[],
): readonly LineEdit[] | undefined {
  const edits: LineEdit[] = [];
  for (const column of columns) {
    const start = offsetAt(string, column);
    if (start === undefined || string.text[start] !== '-') return undefined;
    edits.push({ line, start, end: start + 1, text: '|' });
  }
  return edits;
}

/** A row with each bar line over a bar sign, where only spaces are in the way; nothing that is a mark moves. */
export function straightenRow(row: RowLine, line: number, columns: readonly number[]): readonly LineEdit[] {
  const taken = new Set(
    row.bars.filter(({ column }) => columns.includes(column)).map(({ column }) => column),
  );
  const edits: LineEdit[] = [];
  for (const bar of row.bars) {
    const end = bar.column + bar.width - 1;
    if (columns.some((column) => bar.column <= column && column <= end)) continue;
    const to = columns
      .filter((column) => !taken.has(column) && isBlank(row, column))
      .sort((a, b) => Math.abs(a - bar.column) - Math.abs(b - bar.column))[0];
    const at = to === undefined ? undefined : rowOffsetAt(row, to);
    edits.push({ line, start: bar.start, end: bar.start + bar.text.length, text: ' '.repeat(bar.width) });
    if (to === undefined || at === undefined || at >= row.text.length) continue;
    taken.add(to);
    edits.push({ line, start: at, end: at + 1, text: '|' });
  }
  return edits;
}

function isBlank(row: RowLine, column: number): boolean {
  const at = rowOffsetAt(row, column);
  return at !== undefined && row.text[at] === ' ';
}
