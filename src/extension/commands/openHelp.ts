import * as vscode from 'vscode';
import { headingLine } from '../helpHeading';
import { helpAddress, showPage } from '../helpPages';

const SOURCE = 'pegbox';

/** Opens the help page at the paragraph of a diagnostic: the one named, or the one under the cursor. */
export function registerOpenHelp(): vscode.Disposable {
  return vscode.commands.registerCommand('pegbox.openHelp', async (code?: unknown) => {
    const wanted = typeof code === 'string' ? code : codeUnderCursor();
    await showPage(helpAddress(wanted), (text) => (wanted === undefined ? 0 : headingLine(text, wanted)));
  });
}

function codeUnderCursor(): string | undefined {
  const editor = vscode.window.activeTextEditor;
  if (!editor) return undefined;
  const { active } = editor.selection;
  for (const { code, source, range } of vscode.languages.getDiagnostics(editor.document.uri)) {
    if (source !== SOURCE || !range.contains(active)) continue;
    const value = typeof code === 'object' ? code.value : code;
    if (value !== undefined) return String(value);
  }
  return undefined;
}
