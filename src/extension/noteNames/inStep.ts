import * as vscode from 'vscode';

/** Two texts side by side, and how a place of one is found in the other. */
export interface Pair {
  readonly other: string;
  readonly through: (place: vscode.Position) => vscode.Position;
}

/** A scroll that follows another is no reason to scroll back, for so many milliseconds. */
const FOLLOWS = 250;

/**
 * Keeps the cursors and the scrolling of two texts in step, whichever of them is used. Sideways the cursor alone can be
 * followed: no call of the editor scrolls to a column.
 * @param pairOf the text that belongs to a document, by its address
 */
export class InStep implements vscode.Disposable {
  private readonly following = new WeakMap<vscode.TextEditor, number>();
  private readonly listening: vscode.Disposable;

  constructor(private readonly pairOf: (uri: string) => Pair | undefined) {
    this.listening = vscode.Disposable.from(
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.cursor(textEditor)),
      vscode.window.onDidChangeTextEditorVisibleRanges(({ textEditor }) => this.scrolled(textEditor)),
    );
  }

  /** Puts the cursor of the other text where that of an editor stands. */
  cursor(editor: vscode.TextEditor): void {
    if (editor !== vscode.window.activeTextEditor) return;
    const found = this.otherOf(editor);
    if (!found) return;
    const { other, through } = found;
    const selections = editor.selections.map(
      ({ anchor, active }) => new vscode.Selection(through(anchor), through(active)),
    );
    const [first] = selections;
    if (!first || same(selections, other.selections)) return;
    this.following.set(other, Date.now());
    other.selections = selections;
    other.revealRange(
      new vscode.Range(first.active, first.active),
      vscode.TextEditorRevealType.InCenterIfOutsideViewport,
    );
  }

  dispose(): void {
    this.listening.dispose();
  }

  private scrolled(editor: vscode.TextEditor): void {
    const found = this.otherOf(editor);
    const top = editor.visibleRanges[0]?.start.line;
    if (!found || top === undefined) return;
    if (Date.now() - (this.following.get(editor) ?? 0) < FOLLOWS) return;
    const { other } = found;
    if (other.visibleRanges[0]?.start.line === top) return;
    this.following.set(other, Date.now());
    other.revealRange(new vscode.Range(top, 0, top, 0), vscode.TextEditorRevealType.AtTop);
  }

  private otherOf(
    editor: vscode.TextEditor,
  ): { other: vscode.TextEditor; through: Pair['through'] } | undefined {
    const pair = this.pairOf(editor.document.uri.toString());
    const other =
      pair && vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === pair.other);
    return other && { other, through: pair.through };
  }
}

function same(a: readonly vscode.Selection[], b: readonly vscode.Selection[]): boolean {
  return a.length === b.length && a.every((selection, i) => b[i] !== undefined && selection.isEqual(b[i]));
}
