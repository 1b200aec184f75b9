import * as vscode from 'vscode';

/** The scheme of the help page. A diagnostic's link must be an address: newer editors follow no `command:` there. */
export const HELP_SCHEME = 'pegbox-help';

/** Address of a diagnostic's paragraph for the server, which puts the code in its place. */
export const HELP_LINK = `${HELP_SCHEME}:/help.md#{code}`;

/** The address of the help page, at the heading of a code. */
export function helpAddress(code: string | undefined): vscode.Uri {
  return pageAddress('/help.md').with({ fragment: code ?? '' });
}

function pageAddress(path: string): vscode.Uri {
  return vscode.Uri.from({ scheme: HELP_SCHEME, path });
}

/** Shows a page as a page, or as text where the editor's Markdown preview is not there. */
export async function showPage(page: vscode.Uri, line = (_: string): number => 0): Promise<void> {
  if (vscode.extensions.getExtension('vscode.markdown-language-features')) {
    // The default of `workbench.editorAssociations` in package.json shows it as the editor's Markdown preview.
    await vscode.commands.executeCommand('vscode.open', page);
    return;
  }
  const document = await vscode.workspace.openTextDocument(page);
  const at = new vscode.Position(line(document.getText()), 0);
  await vscode.window.showTextDocument(document, { selection: new vscode.Range(at, at) });
}

/**
 * The help page that is shipped, and pages that are made while the editor runs, under an address that is the same on the desktop and in a browser (where the
 * extension's own files have web addresses, which would open outside the editor). Read only.
 */
export class HelpPages implements vscode.FileSystemProvider {
  private readonly changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly onDidChangeFile = this.changed.event;
  /** By path. */
  private readonly made = new Map<string, { readonly text: Uint8Array; readonly mtime: number }>();

  constructor(private readonly extension: vscode.Uri) {}

  register(): vscode.Disposable {
    const options = { isReadonly: true, isCaseSensitive: true };
    return vscode.workspace.registerFileSystemProvider(HELP_SCHEME, this, options);
  }

  /** Keeps a page in Markdown under a path such as `/hand.md`; one that is shown follows. */
  put(path: string, text: string): void {
    const known = this.made.has(path);
    this.made.set(path, { text: new TextEncoder().encode(text), mtime: Date.now() });
    const type = known ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created;
    this.changed.fire([{ type, uri: pageAddress(path) }]);
  }

  /** Shows a page that was put. */
  async show(path: string): Promise<void> {
    await showPage(pageAddress(path));
  }

  async stat(uri: vscode.Uri): Promise<vscode.FileStat> {
    if (uri.path === '/') return { type: vscode.FileType.Directory, ctime: 0, mtime: 0, size: 0 };
    const { length } = await this.readFile(uri);
    const mtime = this.made.get(uri.path)?.mtime ?? 0;
    return { type: vscode.FileType.File, ctime: 0, mtime, size: length };
  }

  async readFile(uri: vscode.Uri): Promise<Uint8Array> {
    const made = this.made.get(uri.path);
    if (made) return made.text;
    if (uri.path !== '/help.md') throw vscode.FileSystemError.FileNotFound(uri);
    return vscode.workspace.fs.readFile(vscode.Uri.joinPath(this.extension, 'media', 'help.md'));
  }

  readDirectory(): [string, vscode.FileType][] {
    return ['/help.md', ...this.made.keys()].map((path) => [path.slice(1), vscode.FileType.File]);
  }

  /** Changes are told of every page, whether it is watched or not. */
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
