import type { RowLine, StringLine } from '../../notation/parsedLine';
import type { Range, TextEdit } from '../../notation/tabDocument';
import { widthOfText } from '../../notation/columns';
import type { LineEdit, Scene } from '../check';

/** The range of a stretch of one line. */
export function rangeOf(line: number, start: number, end: number): Range {
  return { start: { line, character: start }, end: { line, character: end } };
}

/** A replacement in one line of a document. */
export function replace(line: number, start: number, end: number, newText: string): TextEdit {
  return { range: rangeOf(line, start, end), newText };
}

/**
 * The edit that turns a stretch of a line into another text, without what is the same at its two ends; none where nothing
 * is different.
 * @param offset where the stretch begins in its line
 */
export function smallestEdit(line: number, offset: number, before: string, after: string): TextEdit[] {
  if (before === after) return [];
  const least = Math.min(before.length, after.length);
  let start = 0;
  while (start < least && before[start] === after[start]) start += 1;
  let end = 0;
  while (end < least - start && before[before.length - 1 - end] === after[after.length - 1 - end]) end += 1;
  return [
    replace(line, offset + start, offset + before.length - end, after.slice(start, after.length - end)),
  ];
}

/** Edits with the last place first, so that they may be applied one after the other. */
export function lastFirst(edits: readonly TextEdit[]): readonly TextEdit[] {
  return [...edits].sort(
    (a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character,
  );
}

/** The string line at an index of a system; undefined when that line is something else. */
export function stringLineAt(scene: Scene, line: number): StringLine | undefined {
  const found = scene.system.lines[line];
  return found?.kind === 'string' ? found : undefined;
}

/** The row at an index of a system; undefined when that line is something else. */
export function rowLineAt(scene: Scene, line: number): RowLine | undefined {
  const found = scene.system.lines[line];
  return found?.kind === 'row' ? found : undefined;
}

/**
 * Writes something else for a stretch of a run, without moving anything: what is shorter is filled up with dashes, what
 * is longer takes dashes that follow. Where there are none the whole system grows by the columns that are missing;
 * undefined where some line cannot grow there.
 */
export function rewrite(
  scene: Scene,
  line: number,
  start: number,
  end: number,
  text: string,
): readonly LineEdit[] | undefined {
  const string = stringLineAt(scene, line);
  if (!string) return undefined;
  const more = widthOfText(text) - widthOfText(string.text.slice(start, end));
  if (more <= 0) return [{ line, start, end, text: text + '-'.repeat(-more) }];
  const next = string.tokens.findIndex((token) => token.start === end);
  const following = string.tokens[next];
  if (following?.kind === 'dash') {
    const after = string.tokens[next + 1];
    const spare = after === undefined || after.kind === 'bar' ? following.width : following.width - 1;
    if (spare >= more) return [{ line, start, end: end + more, text }];
  }
  const column = following?.column ?? string.width;
  const others = grow(scene, column, more, line);
  return others && [{ line, start, end, text }, ...others];
}

/** Dashes in place of a stretch of a run. */
export function takeOut(scene: Scene, line: number, start: number, end: number): readonly LineEdit[] {
  const text = scene.system.lines[line]?.text.slice(start, end) ?? '';
  return [{ line, start, end, text: '-'.repeat(widthOfText(text)) }];
}

/** New columns before a column of every line but one; undefined where some line has a sign across that place. */
function grow(scene: Scene, column: number, by: number, but: number): readonly LineEdit[] | undefined {
  const edits: LineEdit[] = [];
  for (const [line, item] of scene.system.lines.entries()) {
    if (line === but) continue;
    if (item.kind === 'string') {
      if (column > item.width) continue;
      const at = offsetAt(item, column);
      if (at === undefined) return undefined;
      edits.push({ line, start: at, end: at, text: '-'.repeat(by) });
    } else if (item.kind === 'row') {
      if (column >= item.width) continue;
      const inside = item.marks.find((mark) => mark.column < column && column < mark.column + mark.width);
      if (inside && item.row !== 'palm mute') return undefined;
      const at = rowOffsetAt(item, column);
      if (at === undefined) return undefined;
      edits.push({ line, start: at, end: at, text: (inside ? '-' : ' ').repeat(by) });
    }
  }
  return edits;
}

/** The offset of a column of a string line's run; undefined inside a sign. */
export function offsetAt(line: StringLine, column: number): number | undefined {
  if (column === line.width) return line.bodyEnd;
  for (const token of line.tokens) {
    if (column === token.column) return token.start;
    if (token.kind === 'dash' && column > token.column && column < token.column + token.width) {
      return token.start + column - token.column;
    }
  }
  return undefined;
}

const PLAIN = /^[\x20-\x7e\u00a0]*$/;

/** The offset of a column of a row; undefined where characters are not one column each. */
export function rowOffsetAt(line: RowLine, column: number): number | undefined {
  return PLAIN.test(line.text.slice(line.bodyStart)) ? line.bodyStart + column : undefined;
}

/** The spaces of a row in place of a stretch of it. */
export function blankOut(scene: Scene, line: number, start: number, end: number): readonly LineEdit[] {
  const text = scene.system.lines[line]?.text.slice(start, end) ?? '';
  return [{ line, start, end, text: ' '.repeat(widthOfText(text)) }];
}

/**
 * Writes another mark into a row, without moving what follows; undefined where there is no room.
 */
export function rewriteMark(
  scene: Scene,
  line: number,
  start: number,
  end: number,
  text: string,
): readonly LineEdit[] | undefined {
  const written = scene.system.lines[line]?.text;
  if (written === undefined) return undefined;
  const more = widthOfText(text) - widthOfText(written.slice(start, end));
  if (more <= 0) {
    const last = written.slice(end).trim() === '';
    return [{ line, start, end, text: last ? text : text + ' '.repeat(-more) }];
  }
  const gap = /^ */.exec(written.slice(end))?.[0].length ?? 0;
  const next = written[end + gap];
  if (next === undefined) return [{ line, start, end: end + Math.min(gap, more), text }];
  const spare = next === '|' || next === ':' ? gap : gap - 1;
  return spare >= more ? [{ line, start, end: end + more, text }] : undefined;
}
