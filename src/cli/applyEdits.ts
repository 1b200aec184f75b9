import type { Place, TextEdit } from '../notation/tabDocument';

const LINE_END = /\r\n|\r|\n/g;

/**
 * A text after edits that all speak of the text before; what they put in gets the line ends that the text has.
 * @param edits stretches that do not overlap, in any order
 * @example applyEdits('a\r\nb', [{ range: { start: { line: 1, character: 0 }, end: { line: 1, character: 1 } }, newText: 'x\ny' }]) // 'a\r\nx\r\ny'
 */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const starts = [0];
  for (const match of text.matchAll(LINE_END)) starts.push(match.index + match[0].length);
  const offset = ({ line, character }: Place): number =>
    Math.min(text.length, (starts[line] ?? text.length) + character);
  const lineEnd = usualLineEnd(text);
  const placed = edits
    .map(({ range, newText }) => ({ start: offset(range.start), end: offset(range.end), newText }))
    .sort((a, b) => a.start - b.start || a.end - b.end);
  let result = '';
  let done = 0;
  for (const { start, end, newText } of placed) {
    result += text.slice(done, start) + newText.replace(LINE_END, lineEnd);
    done = end;
  }
  return result + text.slice(done);
}

/** The line end that most lines have; LF where none is. */
function usualLineEnd(text: string): string {
  const counts = new Map<string, number>();
  for (const [end] of text.matchAll(LINE_END)) counts.set(end, (counts.get(end) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? '\n';
}
