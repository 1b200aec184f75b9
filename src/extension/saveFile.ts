import * as vscode from 'vscode';

/** What is to become a file. */
export interface NewFile {
  readonly text: string;
  /** Without its ending. */
  readonly name: string;
  readonly ending: 'svg' | 'txt';
  /** Stands over the dialog: `Save handout`. */
  readonly title: string;
}

const KINDS = { svg: 'SVG picture', txt: 'Text' } as const;

/**
 * Saves a file where the user says, at first beside the tab. In a browser the dialog is the editor's own.
 * @param to where to, for callers that know it already; nothing is asked then
 * @returns the file, or undefined when the user called it off
 */
export async function saveFile(
  { text, name, ending, title }: NewFile,
  beside: vscode.Uri,
  to?: vscode.Uri,
): Promise<vscode.Uri | undefined> {
  const folder =
    beside.scheme === 'untitled'
      ? vscode.workspace.workspaceFolders?.[0]?.uri
      : vscode.Uri.joinPath(beside, '..');
  const file =
    to ??
    (await vscode.window.showSaveDialog({
      title,
      filters: { [KINDS[ending]]: [ending] },
      ...(folder && { defaultUri: vscode.Uri.joinPath(folder, `${name}.${ending}`) }),
    }));
  if (!file) return undefined;
  await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
  return file;
}
