import * as vscode from 'vscode';

/** The cursor rests this long, in milliseconds, before views follow it. */
const REST = 40;

/** A place in a tab. */
export interface TabPlace {
  readonly document: vscode.TextDocument;
  readonly position: vscode.Position;
  readonly viewColumn: vscode.ViewColumn | undefined;
}

/**
 * Where the cursor of a tab last stood. While a page has the focus VS Code knows no active editor (vscode#101682), so
 * what a page writes goes to the place remembered here, and `onDidMove` fires when it or the text has changed.
 */
export class LastPlace implements vscode.Disposable {
  private editor: vscode.TextEditor | undefined;
  private waiting: ReturnType<typeof setTimeout> | undefined;
  private readonly moved = new vscode.EventEmitter<void>();
  private readonly listening: vscode.Disposable;
  readonly onDidMove = this.moved.event;

  constructor() {
    this.take(vscode.window.activeTextEditor);
    this.takeSeen(vscode.window.visibleTextEditors);
    this.listening = vscode.Disposable.from(
      vscode.window.onDidChangeVisibleTextEditors((editors) => this.takeSeen(editors)),
      vscode.window.onDidChangeActiveTextEditor((editor) => this.take(editor)),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.take(textEditor)),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (contentChanges.length > 0 && document === this.editor?.document) this.tell();
      }),
      vscode.workspace.onDidCloseTextDocument((document) => {
        if (document !== this.editor?.document) return;
        this.editor = undefined;
        this.tell();
      }),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (change.affectsConfiguration('pegbox')) this.tell();
      }),
    );
  }

  /** Undefined before a cursor has stood in a tab, and after that tab was closed. */
  get current(): TabPlace | undefined {
    const { editor } = this;
    if (!editor || editor.document.isClosed) return undefined;
    return { document: editor.document, position: editor.selection.active, viewColumn: editor.viewColumn };
  }

  dispose(): void {
    clearTimeout(this.waiting);
    this.listening.dispose();
    this.moved.dispose();
  }

  /** A page, an output or another language is no tab: the last one stays. */
  private take(editor: vscode.TextEditor | undefined): void {
    if (editor?.document.languageId !== 'pegbox') return;
    this.editor = editor;
    this.tell();
  }

  /** After a reload of the window a page may have the focus, and the tab beside it has had none yet. */
  private takeSeen(editors: readonly vscode.TextEditor[]): void {
    if (this.current) return;
    this.take(editors.find(({ document }) => document.languageId === 'pegbox'));
  }

  private tell(): void {
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => this.moved.fire(), REST);
  }
}
