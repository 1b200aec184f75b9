import * as vscode from 'vscode';
import type { FileFound } from '../../server/requests';
import type { FoundPassage } from '../../service/find/findAnswer';
import { fileName } from '../fileName';
import { toRange } from '../ranges';

/** What was looked for and found. */
export interface Found {
  /** `D4 E4 F#4, the tune in the same rhythm`. */
  readonly what: string;
  readonly files: readonly FileFound[];
}

type Node =
  | { readonly kind: 'file'; readonly file: FileFound }
  | { readonly kind: 'passage'; readonly file: FileFound; readonly passage: FoundPassage };

/** The tree of passages that sound alike, by file, in Pegbox's side bar. */
export class FoundView implements vscode.TreeDataProvider<Node>, vscode.Disposable {
  private found: Found | undefined;
  private roots: Node[] = [];
  private readonly changed = new vscode.EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.changed.event;
  private readonly view: vscode.TreeView<Node>;
  private readonly opening: vscode.Disposable;

  constructor() {
    this.view = vscode.window.createTreeView('pegbox.found', {
      treeDataProvider: this,
      showCollapseAll: true,
    });
    this.view.title = 'Found by Sound'; // with a description, some editors show no name of their own
    this.opening = vscode.commands.registerCommand('pegbox.openFound', openPassage);
  }

  /** Shows what was found, with the cursor on the first passage. */
  async show(found: Found): Promise<void> {
    this.found = found;
    this.roots = found.files.map((file): Node => ({ kind: 'file', file }));
    const passages = found.files.reduce((sum, file) => sum + file.passages.length, 0);
    this.view.description = found.what;
    this.view.message =
      passages === 0 ? `Nothing else sounds like ${found.what}.` : summaryOf(found, passages);
    this.changed.fire(undefined);
    const [first] = this.roots;
    if (first) await this.view.reveal(first, { focus: true, select: true, expand: true });
    else await vscode.commands.executeCommand('pegbox.found.focus');
  }

  /** What is shown, for tests and callers. */
  get shown(): Found | undefined {
    return this.found;
  }

  getChildren(node?: Node): Node[] {
    if (!node) return this.roots;
    if (node.kind === 'passage') return [];
    const { file } = node;
    return file.passages.map((passage) => ({ kind: 'passage', file, passage }));
  }

  getParent(node: Node): Node | undefined {
    return node.kind === 'file' ? undefined : this.roots.find(({ file }) => file === node.file);
  }

  getTreeItem(node: Node): vscode.TreeItem {
    const { file } = node;
    const uri = vscode.Uri.parse(file.uri, true);
    if (node.kind === 'file') {
      const item = new vscode.TreeItem(
        file.title === '' ? fileName(uri) : file.title,
        vscode.TreeItemCollapsibleState.Expanded,
      );
      item.description = `${count(file.passages.length)}, ${fileName(uri)}`; // a narrow side bar cuts off what comes last
      item.tooltip = vscode.workspace.asRelativePath(uri);
      item.iconPath = new vscode.ThemeIcon('file');
      return item;
    }
    const { passage } = node;
    const [where = '', ...rest] = passage.words.split('; ');
    const item = new vscode.TreeItem(where.charAt(0).toUpperCase() + where.slice(1));
    item.description = rest.reverse().join(', '); // how far apart before in what tuning
    item.tooltip = passage.words;
    item.command = { command: 'pegbox.openFound', title: 'Open', arguments: [file.uri, passage] };
    return item;
  }

  dispose(): void {
    this.view.dispose();
    this.opening.dispose();
    this.changed.dispose();
  }
}

function summaryOf({ files }: Found, passages: number): string {
  return `${count(passages)} in ${files.length} ${files.length === 1 ? 'file' : 'files'}`;
}

function count(passages: number): string {
  return `${passages} ${passages === 1 ? 'passage' : 'passages'}`;
}

/** Opens a file with the passage's notes selected. */
async function openPassage(uri: string, { ranges }: FoundPassage): Promise<void> {
  const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri, true));
  const editor = await vscode.window.showTextDocument(document);
  const selections = ranges.map((range) => {
    const { start, end } = toRange(range);
    return new vscode.Selection(start, end);
  });
  const [first, last] = [selections[0], selections.at(-1)];
  if (!first || !last) return;
  editor.selections = selections;
  editor.revealRange(first.union(last), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}
