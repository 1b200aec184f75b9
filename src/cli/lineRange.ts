import type { Range, TabDocument } from '../notation/tabDocument';
import { Refusal } from './refusal';

/**
 * Reads the value of `--lines`: whole lines of a document, from 1; one number is one line.
 * @throws {Refusal} for anything else, and for lines that the document does not have
 * @example readLineRange('3-4', document) // { start: { line: 2, character: 0 }, end: { line: 3, character: … } }
 */
export function readLineRange(value: string, document: TabDocument): Range {
  const match = /^\s*(\d+)\s*(?:[-–]\s*(\d+)\s*)?$/.exec(value);
  if (!match)
    throw new Refusal(`--lines takes the first and last line, such as 12-20; “${value}” is neither.`);
  const first = Number(match[1]);
  const last = Number(match[2] ?? match[1]);
  if (first > last) throw new Refusal(`--lines ${value} ends before it begins; write ${last}-${first}.`);
  const count = writtenLines(document);
  if (first < 1) throw new Refusal(`--lines counts from 1; write 1-${Math.max(last, 1)}.`);
  if (last > count)
    throw new Refusal(
      `--lines ${value} goes past the end: the text has ${count} ${count === 1 ? 'line' : 'lines'}.`,
    );
  return {
    start: { line: first - 1, character: 0 },
    end: { line: last - 1, character: document.line(last - 1).text.length },
  };
}

/** Lines as an editor's last line number has them, without the empty one behind the last line end. */
function writtenLines(document: TabDocument): number {
  const { lineCount } = document;
  return lineCount > 1 && document.line(lineCount - 1).text === '' ? lineCount - 1 : lineCount;
}
