import * as vscode from 'vscode';
import { stringCandidate } from '../formats/plainTab/stringCandidate';
import { REQUESTS } from '../server/requests';
import { plainRange, toRange } from './ranges';
import type { ServerRequests } from './serverRequests';

const KIND = vscode.DocumentDropOrPasteEditKind.Empty.append('tab', 'pegbox');
const PLAIN = 'text/plain';

/** More lines than this are not looked through to see whether a paste may be tab. */
const LOOKED_AT = 2_000;

/** Characters; for more the editor's own paste is not kept waiting, and the command does it. An engineering value. */
const LONGEST = 200_000;

/**
 * Offers to read a plain tab that is pasted into a tab. The editor's own paste stays what the key does: this one is a
 * choice beside it.
 */
export function registerPasteChoice(requests: ServerRequests): vscode.Disposable {
  const provider: vscode.DocumentPasteEditProvider = {
    async provideDocumentPasteEdits(document, [range, ...others], dataTransfer, _context, token) {
      const text = await dataTransfer.get(PLAIN)?.asString();
      if (text === undefined || range === undefined || others.length > 0) return undefined;
      if (text.length > LONGEST || !looksLikeTab(text)) return undefined;
      const answer = await requests.ask(REQUESTS.pasteTab, {
        uri: document.uri.toString(),
        range: plainRange(range),
        text,
      });
      if (token.isCancellationRequested || 'error' in answer || answer.systems === 0) return undefined;
      if (answer.version !== document.version) return undefined;
      const own = answer.edits.at(-1);
      if (!own) return undefined;
      const edit = new vscode.DocumentPasteEdit(own.newText, 'Paste as Tab', KIND);
      const fields = answer.edits.slice(0, -1);
      if (fields.length > 0) {
        edit.additionalEdit = new vscode.WorkspaceEdit();
        edit.additionalEdit.set(
          document.uri,
          fields.map((field) => new vscode.TextEdit(toRange(field.range), field.newText)),
        );
      }
      edit.yieldTo = [vscode.DocumentDropOrPasteEditKind.Text];
      return [edit];
    },
  };
  return vscode.languages.registerDocumentPasteEditProvider({ language: 'pegbox' }, provider, {
    providedPasteEditKinds: [KIND],
    pasteMimeTypes: [PLAIN],
  });
}

/** Whether at least two lines look like strings. */
function looksLikeTab(text: string): boolean {
  let strings = 0;
  for (const line of text.split(/\r\n|\r|\n/, LOOKED_AT)) {
    const columns = line
      .replace(/^(?:> ?)+/, '')
      .replace(/[\u00a0\u202f\t]/g, ' ')
      .replace(/[–─−]/g, '-')
      .replace(/[│┃¦]/g, '|');
    if (stringCandidate(columns, 0) && ++strings === 2) return true;
  }
  return false;
}
