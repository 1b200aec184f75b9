import * as vscode from 'vscode';
import type { ListedFile } from '../../server/requests';

/** No more files than this are looked at. */
export const MOST_FILES = 2000;

/** Folders that hold no one's songs. */
const PASSED_OVER = /^(?:\.|node_modules$)/;

/** How many files the file system is asked about at a time. */
const AT_A_TIME = 40;

export interface Walked {
  /** In the order of their paths. */
  readonly files: readonly ListedFile[];
  /** Whether there are more than may be looked at. */
  readonly more: boolean;
}

/**
 * Every tab file of the workspace, and tabs that are open though they are saved nowhere. It walks the file system
 * itself, since an editor in a browser may have no search for files.
 * @param most no more files of the workspace than this
 */
export async function walk(cancellation: vscode.CancellationToken, most = MOST_FILES): Promise<Walked> {
  const uris: vscode.Uri[] = [];
  for (const { uri } of vscode.workspace.workspaceFolders ?? [])
    await walkFolder(uri, uris, cancellation, most);
  const some = uris.slice(0, most);
  const files: ListedFile[] = [];
  for (let i = 0; i < some.length && !cancellation.isCancellationRequested; i += AT_A_TIME)
    files.push(...(await Promise.all(some.slice(i, i + AT_A_TIME).map(stamped))).flat());
  const listed = new Set(files.map(({ uri }) => uri));
  for (const document of vscode.workspace.textDocuments) {
    const uri = document.uri.toString();
    if (isTab(document) && !listed.has(uri)) files.push({ uri, stamp: 'open' });
  }
  return { files, more: uris.length > most };
}

/** A tab that a user has open, and not a page that Pegbox made or an earlier version that a diff shows. */
function isTab({ languageId, isClosed, uri: { scheme } }: vscode.TextDocument): boolean {
  if (languageId !== 'pegbox' || isClosed) return false;
  return scheme === 'untitled' || vscode.workspace.fs.isWritableFileSystem(scheme) === true;
}

async function walkFolder(
  folder: vscode.Uri,
  found: vscode.Uri[],
  cancellation: vscode.CancellationToken,
  most: number,
): Promise<void> {
  if (found.length > most || cancellation.isCancellationRequested) return;
  const entries = await readFolder(folder);
  entries.sort(([a], [b]) => (a < b ? -1 : 1));
  for (const [name, type] of entries) {
    const uri = vscode.Uri.joinPath(folder, name);
    // A folder behind a symbolic link may hold itself.
    if (type === vscode.FileType.Directory && !PASSED_OVER.test(name))
      await walkFolder(uri, found, cancellation, most);
    else if ((type & vscode.FileType.File) !== 0 && name.toLowerCase().endsWith('.pegbox')) found.push(uri);
    if (found.length > most) return;
  }
}

/** A folder that may not be read holds nothing. */
async function readFolder(folder: vscode.Uri): Promise<[string, vscode.FileType][]> {
  try {
    return [...(await vscode.workspace.fs.readDirectory(folder))];
  } catch {
    return [];
  }
}

/** A file that went away meanwhile is none. */
async function stamped(uri: vscode.Uri): Promise<ListedFile[]> {
  try {
    const { mtime, size } = await vscode.workspace.fs.stat(uri);
    return [{ uri: uri.toString(), stamp: `${mtime} ${size}` }];
  } catch {
    return [];
  }
}
