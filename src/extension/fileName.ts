import type * as vscode from 'vscode';

/**
 * The name of a file without its folders.
 * @example fileName(vscode.Uri.file('/songs/lantern.pegbox')) // 'lantern.pegbox'
 */
export function fileName({ path }: Pick<vscode.Uri, 'path'>): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
