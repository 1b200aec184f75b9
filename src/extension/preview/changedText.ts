import type { TextEdit } from 'vscode-languageclient';
import type { TextDocument } from 'vscode';
import { toRange } from '../ranges';

/** The text of a document as edits would leave it; they refer to it as it is, and none overlap. */
export function changedText(document: TextDocument, edits: readonly TextEdit[]): string {
  const text = document.getText();
  const pieces = edits
    .map(({ range, newText }) => {
      const { start, end } = toRange(range);
      return { from: document.offsetAt(start), to: document.offsetAt(end), newText };
    })
    .sort((one, other) => one.from - other.from);
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  let changed = '';
  let at = 0;
  for (const { from, to, newText } of pieces) {
    changed += text.slice(at, from) + newText.replace(/\r\n|\n/g, eol);
    at = to;
  }
  return changed + text.slice(at);
}
