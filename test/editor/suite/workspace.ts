import * as vscode from 'vscode';

/** Opens a file of test/editor/workspace in an editor. */
export async function openFile(name: string): Promise<vscode.TextEditor> {
  return vscode.window.showTextDocument(fileNamed(name));
}

/** The address of a file of test/editor/workspace, or of the copy that the tests may write to. */
export function fileNamed(name: string): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (!folder) throw new Error('The editor tests need a folder: it was not opened.');
  return vscode.Uri.joinPath(folder.uri, name);
}
