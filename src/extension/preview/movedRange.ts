import type { Position, Range } from 'vscode-languageclient';

/** A change of a text, as an editor tells it. */
export interface TextReplaced {
  readonly range: Range;
  readonly text: string;
}

/**
 * Where a range lies after changes of the text around and in it. What is put in at its edges stays outside. Undefined
 * when a change took away all that the range held.
 *
 * @param changes in the order in which they were made, each referring to the text that the one before left
 * @example movedRange(lines5to9, [{ range: emptyAtLine2, text: '\n' }]) // lines 6 to 10
 */
export function movedRange(range: Range, changes: readonly TextReplaced[]): Range | undefined {
  let moved: Range | undefined = range;
  for (const change of changes) moved &&= movedBy(moved, change);
  return moved;
}

function movedBy({ start, end }: Range, { range: gone, text }: TextReplaced): Range | undefined {
  const insertion = same(gone.start, gone.end);
  if (!insertion && !before(start, gone.start) && !before(gone.end, end)) return undefined;
  const behind = endOf(gone.start, text);
  const shift = (place: Position): Position =>
    place.line === gone.end.line
      ? { line: behind.line, character: behind.character + place.character - gone.end.character }
      : { line: place.line + behind.line - gone.end.line, character: place.character };
  return {
    start: before(start, gone.start) ? start : before(start, gone.end) ? behind : shift(start),
    end: !before(gone.start, end) ? end : before(end, gone.end) ? gone.start : shift(end),
  };
}

/** Where a text ends that begins at a place. */
function endOf({ line, character }: Position, text: string): Position {
  const lines = text.split('\n');
  const last = lines.at(-1)?.length ?? 0;
  return lines.length === 1
    ? { line, character: character + last }
    : { line: line + lines.length - 1, character: last };
}

function before(one: Position, other: Position): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}

function same(one: Position, other: Position): boolean {
  return !before(one, other) && !before(other, one);
}

/** What two ranges have in common; undefined when that is nothing. */
export function common(one: Range, other: Range | undefined): Range | undefined {
  if (other === undefined) return one;
  const start = before(one.start, other.start) ? other.start : one.start;
  const end = before(one.end, other.end) ? one.end : other.end;
  return before(start, end) ? { start, end } : undefined;
}
