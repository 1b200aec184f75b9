import * as vscode from 'vscode';

/** The scheme of the help page. A diagnostic's link must be an address: newer editors follow no `command:` there. */
export const HELP_SCHEME = 'pegbox-help';

/** Address of a diagnostic's paragraph for the server, which puts the code in its place. */
export const HELP_LINK = `${HELP_SCHEME}:/help.md#{code}`;

/** The address of the help page, at the heading of a code. */
export function helpAddress(code: string | undefined): vscode.Uri {
  return vscode.Uri.from({ scheme: HELP_SCHEME, path: '/help.md', fragment: code ?? '' });
}

/**
 * The help page that is shipped, under an address that is the same on the desktop and in a browser (where the
 * extension's own files have web addresses, which would open outside the editor). Read only.
 */
export class HelpPages implements vscode.FileSystemProvider {
  readonly onDidChangeFile = new vscode.EventEmitter<vscode.FileChangeEvent[]>().event;

  constructor(private readonly extension: vscode.Uri) {}

  register(): vscode.Disposable {
    const options = { isReadonly: true, isCaseSensitive: true };
    return vscode.workspace.registerFileSystemProvider(HELP_SCHEME, this, options);
  }

  async stat(uri: vscode.Uri): Promise<vscode.FileStat> {
    if (uri.path === '/') return { type: vscode.FileType.Directory, ctime: 0, mtime: 0, size: 0 };
    const { length } = await this.readFile(uri);
    return { type: vscode.FileType.File, ctime: 0, mtime: 0, size: length };
  }

  async readFile(uri: vscode.Uri): Promise<Uint8Array> {
    if (uri.path !== '/help.md') throw vscode.FileSystemError.FileNotFound(uri);
    return vscode.workspace.fs.readFile(vscode.Uri.joinPath(this.extension, 'media', 'help.md'));
  }

  readDirectory(): [string, vscode.FileType][] {
    return [['help.md', vscode.FileType.File]];
  }

  /** It is part of the extension and does not change. */
  watch(): vscode.Disposable {
    return new vscode.Disposable(() => undefined);
  }

  createDirectory(uri: vscode.Uri): never {
    throw vscode.FileSystemError.NoPermissions(uri);
  }

  writeFile(uri: vscode.Uri): never {
    throw vscode.FileSystemError.NoPermissions(uri);
  }

  delete(uri: vscode.Uri): never {
    throw vscode.FileSystemError.NoPermissions(uri);
  }

  rename(uri: vscode.Uri): never {
    throw vscode.FileSystemError.NoPermissions(uri);
  }
}
