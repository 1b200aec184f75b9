import type { TabDocument } from '../notation/tabDocument';
import { lineRange } from './locate';
import type { Range } from './records';

/** From the first character of a line to the last of another. */
export function linesRange(document: TabDocument, first: number, last: number): Range {
  return {
    start: { line: first, character: 0 },
    end: { line: last, character: document.line(last).text.length },
  };
}

/** A whole line. */
export function wholeLine(document: TabDocument, line: number): Range {
  return lineRange(line, 0, document.line(line).text.length);
}

/** The last line from `first` to `last` that is not blank; `first` when all are. */
export function lastWrittenLine(document: TabDocument, first: number, last: number): number {
  let at = last;
  while (at > first && document.line(at).kind === 'blank') at--;
  return at;
}
