import * as vscode from 'vscode';
import type { Range } from 'vscode-languageclient';
import { movedRange } from './preview/movedRange';

/** A range that goes where its text goes while something takes long; the whole file stays the whole file. */
export class FollowedRange implements vscode.Disposable {
  /** Whether the text was edited. */
  edited = false;
  /** Whether all that the range held was taken away. */
  lost = false;
  private readonly listening: vscode.Disposable;

  constructor(
    document: vscode.TextDocument,
    public range: Range | undefined,
  ) {
    this.listening = vscode.workspace.onDidChangeTextDocument((event) => {
      if (event.document !== document || event.contentChanges.length === 0) return;
      this.edited = true;
      if (this.range === undefined) return;
      const moved = movedRange(this.range, event.contentChanges);
      if (moved) this.range = moved;
      else this.lost = true;
    });
  }

  dispose(): void {
    this.listening.dispose();
  }
}
