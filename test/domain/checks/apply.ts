import type { Mend } from '../../../src/checks/check';
import { Document } from '../../../src/notation/document';
import type { TextEdit } from '../../../src/notation/tabDocument';

/** The text after a mend, as an editor makes it: all edits count in the text as it was. */
export function applyMend(text: string, mend: Mend): string {
  return applyEdits(text, mend.edits);
}

export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const starts = [0];
  for (const match of text.matchAll(/\r\n|\r|\n/g)) starts.push(match.index + match[0].length);
  const offset = ({ line, character }: { line: number; character: number }): number =>
    line >= starts.length ? text.length : (starts[line] ?? 0) + character;
  const placed = edits.map(({ range, newText }) => ({
    from: offset(range.start),
    to: offset(range.end),
    newText,
  }));
  let result = text;
  let before = text.length + 1;
  for (const { from, to, newText } of placed) {
    if (from > to || to > before) throw new Error('Edits overlap, or do not stand last place first.');
    result = result.slice(0, from) + newText + result.slice(to);
    before = from;
  }
  return result;
}

/** Every note of a text as its system, string and fret, in no order of time. */
export function notesOf(text: string): string[] {
  return new Document(text).systems
    .flatMap(({ reading: { notes } }) =>
      notes.map(({ kind, fret, string }) => `${kind} ${string}:${fret ?? 'x'}`),
    )
    .sort();
}
