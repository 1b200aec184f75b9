import * as vscode from 'vscode';
import { headingLine } from '../helpHeading';
import { helpAddress } from '../helpPages';

const SOURCE = 'pegbox';

/** Opens the help page at the paragraph of a diagnostic: the one named, or the one under the cursor. */
export function registerOpenHelp(): vscode.Disposable {
  return vscode.commands.registerCommand('pegbox.openHelp', async (code?: unknown) => {
    const wanted = typeof code === 'string' ? code : codeUnderCursor();
    const page = helpAddress(wanted);
    if (vscode.extensions.getExtension('vscode.markdown-language-features')) {
      // The default of `workbench.editorAssociations` in package.json shows it as the editor's Markdown preview.
      await vscode.commands.executeCommand('vscode.open', page);
    } else {
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
