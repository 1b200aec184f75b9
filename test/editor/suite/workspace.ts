import * as vscode from 'vscode';

/** Opens a file of test/editor/workspace in an editor. */
export async function openFile(name: string): Promise<vscode.TextEditor> {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (!folder) throw new Error('The editor tests need a folder: it was not opened.');
  return vscode.window.showTextDocument(vscode.Uri.joinPath(folder.uri, name));
}
