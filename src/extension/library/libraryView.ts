import * as vscode from 'vscode';
import { REQUESTS, type LibraryAnswer } from '../../server/requests';
import { groupFiles, GROUPINGS, type Grouping, type LibraryGroup } from '../../service/library/grouping';
import type { LibraryEntry } from '../../service/library/libraryAnswer';
import { pick } from '../pick';
import { fileName } from '../fileName';
import type { ServerRequests } from '../serverRequests';
import { sendFiles } from './sendFiles';
import { walk } from './walk';

/** A file as the library shows it. */
export interface LibraryFile {
  readonly uri: string;
  readonly name: string;
  readonly entry: LibraryEntry;
}

type Group = LibraryGroup<LibraryFile>;
type Node =
  { readonly kind: 'group'; readonly group: Group } | { readonly kind: 'file'; readonly file: LibraryFile };

/** Changes come in crowds, such as a checkout or typing; the library waits until they are over, in milliseconds. */
const REST = 400;

/** Under which the choice of the grouping is remembered for a workspace. */
const MEMORY = 'pegbox.library.group';

/** The tabs of the workspace by tuning, capo, key or range, in Pegbox's side bar; what stands unsaved in editors counts. */
export class LibraryView implements vscode.TreeDataProvider<Node>, vscode.Disposable {
  private files: readonly LibraryFile[] = [];
  private groups: readonly Group[] = [];
  private fresh = false;
  private reading: vscode.CancellationTokenSource | undefined;
  private waiting: ReturnType<typeof setTimeout> | undefined;
  private readonly changed = new vscode.EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.changed.event;
  private readonly view: vscode.TreeView<Node>;
  private readonly parts: vscode.Disposable;

  constructor(
    private readonly requests: ServerRequests,
    private readonly memory: vscode.Memento,
  ) {
    this.view = vscode.window.createTreeView('pegbox.library', {
      treeDataProvider: this,
      showCollapseAll: true,
    });
    this.view.title = 'Library'; // with a description, some editors show no name of their own
    const watcher = vscode.workspace.createFileSystemWatcher('**/*.pegbox');
    const stale = (): void => this.stale();
    this.parts = vscode.Disposable.from(
      this.view,
      this.changed,
      watcher,
      watcher.onDidChange(stale),
      watcher.onDidCreate(stale),
      watcher.onDidDelete(stale),
      vscode.workspace.onDidChangeWorkspaceFolders(stale),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId === 'pegbox') stale();
      }),
      vscode.workspace.onDidOpenTextDocument(({ languageId }) => {
        if (languageId === 'pegbox') stale();
      }),
      vscode.workspace.onDidCloseTextDocument(({ languageId }) => {
        if (languageId === 'pegbox') stale();
      }),
      vscode.workspace.onDidChangeConfiguration((event) => {
        if (event.affectsConfiguration('pegbox.tunings')) stale();
      }),
      this.view.onDidChangeVisibility(({ visible }) => {
        if (visible && !this.fresh) this.stale();
      }),
      vscode.commands.registerCommand('pegbox.groupLibrary', (by?: Grouping) => this.chooseGrouping(by)),
      vscode.commands.registerCommand('pegbox.refreshLibrary', () => this.read()),
    );
  }

  /** What the tree shows, for tests and callers. */
  get shown(): readonly Group[] {
    return this.groups;
  }

  async getChildren(node?: Node): Promise<Node[]> {
    if (node) return node.kind === 'group' ? node.group.files.map((file) => ({ kind: 'file', file })) : [];
    if (!this.fresh && !this.reading) await this.read(false);
    return this.groups.map((group) => ({ kind: 'group', group }));
  }

  getTreeItem(node: Node): vscode.TreeItem {
    if (node.kind === 'group') {
      const { name, files } = node.group;
      const item = new vscode.TreeItem(name, vscode.TreeItemCollapsibleState.Expanded);
      item.id = `group ${this.grouping} ${name}`;
      item.description = `${files.length} ${files.length === 1 ? 'file' : 'files'}`;
      return item;
    }
    const { uri, name, entry } = node.file;
    const address = vscode.Uri.parse(uri, true);
    const item = new vscode.TreeItem(entry.title === '' ? name : entry.title);
    item.description = [this.grouping === 'tuning' ? '' : entry.tunings.join(', '), rangeText(entry)]
      .filter((text) => text !== '')
      .join('; ');
    item.tooltip = tooltipFor(address, entry);
    item.iconPath = new vscode.ThemeIcon('file');
    item.command = { command: 'vscode.open', title: 'Open', arguments: [address] };
    return item;
  }

  dispose(): void {
    clearTimeout(this.waiting);
    this.reading?.cancel();
    this.parts.dispose();
  }

  private get grouping(): Grouping {
    const kept = this.memory.get<string>(MEMORY);
    return GROUPINGS.find((one) => one === kept) ?? 'tuning';
  }

  private stale(): void {
    this.fresh = false;
    if (!this.view.visible) return;
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => void this.read().catch(() => undefined), REST);
  }

  private async chooseGrouping(given?: Grouping): Promise<void> {
    const items = GROUPINGS.map((by) => ({ label: NAMES[by], by }));
    const by =
      given ??
      (
        await pick(items, {
          title: 'Group the library',
          placeholder: 'What files have in common that stand together',
          active: items.find((item) => item.by === this.grouping),
        })
      )?.by;
    if (by === undefined) return;
    await this.memory.update(MEMORY, by);
    this.put(this.files);
    this.changed.fire(undefined);
  }

  /** Reads the workspace anew; of two at a time the later one counts. */
  private async read(tell = true): Promise<readonly Group[]> {
    this.reading?.cancel();
    const source = new vscode.CancellationTokenSource();
    this.reading = source;
    try {
      const files = await this.filesNow(source.token);
      if (files === undefined || this.reading !== source) return this.groups;
      this.fresh = true;
      this.put(files);
    } finally {
      if (this.reading === source) this.reading = undefined;
      source.dispose();
    }
    if (tell) this.changed.fire(undefined);
    return this.groups;
  }

  private put(files: readonly LibraryFile[]): void {
    this.files = files;
    this.groups = groupFiles(files, this.grouping);
    this.view.description = `by ${this.grouping}`;
  }

  private async filesNow(
    cancellation: vscode.CancellationToken,
  ): Promise<readonly LibraryFile[] | undefined> {
    const { files } = await walk(cancellation);
    if (cancellation.isCancellationRequested) return undefined;
    let answer = await this.requests.ask(REQUESTS.library, { files });
    if (!('error' in answer) && answer.missing.length > 0) {
      const wanted = new Set(answer.missing);
      const missing = files.filter(({ uri }) => wanted.has(uri));
      if (!(await sendFiles(this.requests, missing, cancellation))) return undefined;
      answer = await this.requests.ask(REQUESTS.library, { files });
    }
    return 'error' in answer ? undefined : answer.files.map(named);
  }
}

function named({ uri, entry }: LibraryAnswer['files'][number]): LibraryFile {
  return { uri, entry, name: fileName(vscode.Uri.parse(uri, true)) };
}

const NAMES: Readonly<Record<Grouping, string>> = {
  tuning: 'By tuning',
  capo: 'By capo',
  key: 'By key',
  range: 'By range: the lowest note first',
};

function rangeText({ range }: LibraryEntry): string {
  return range ? `${range.low}–${range.high}` : '';
}

function tooltipFor(uri: vscode.Uri, entry: LibraryEntry): string {
  const { tunings, notes, capos, keys, parts, bars } = entry;
  const tuning = tunings.map((name, i) =>
    notes[i] === undefined || notes[i] === name ? name : `${name} (${notes[i]})`,
  );
  return [
    vscode.workspace.asRelativePath(uri),
    `Tuning: ${tuning.join('; ')}`,
    `Capo: ${capos.join('; ')}`,
    ...(keys.length > 0 ? [`Key: ${keys.join('; ')}`] : []),
    ...(parts.length > 0 ? [`Parts: ${parts.join(', ')}`] : []),
    ...(entry.range ? [`Sounds from ${entry.range.low} to ${entry.range.high}`] : []),
    `${bars} ${bars === 1 ? 'bar' : 'bars'}`,
  ].join('\n');
}
