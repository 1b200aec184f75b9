import * as vscode from 'vscode';
import { headingLine } from '../helpHeading';

/** Address of a diagnostic's help for the server; VS Code runs the command when the link is followed. */
export const HELP_LINK = 'command:pegbox.openHelp?%5B%22{code}%22%5D';

const SOURCE = 'pegbox';

/** Opens the help page at the paragraph of a diagnostic: the one named, or the one under the cursor. */
export function registerOpenHelp(extension: vscode.Uri): vscode.Disposable {
  const page = vscode.Uri.joinPath(extension, 'media', 'help.md');
  return vscode.commands.registerCommand('pegbox.openHelp', async (code?: unknown) => {
    const wanted = typeof code === 'string' ? code : codeUnderCursor();
    try {
      await vscode.commands.executeCommand('markdown.showPreview', page.with({ fragment: wanted ?? '' }));
    } catch {
      // Where VS Code's Markdown preview is switched off.
      await showAsText(page, wanted);
    }
  });
}

async function showAsText(page: vscode.Uri, code: string | undefined): Promise<void> {
  const document = await vscode.workspace.openTextDocument(page);
  const at = new vscode.Position(code === undefined ? 0 : headingLine(document.getText(), code), 0);
  await vscode.window.showTextDocument(document, { selection: new vscode.Range(at, at) });
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
