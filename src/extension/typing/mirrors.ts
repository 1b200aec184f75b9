import * as vscode from 'vscode';
import { Document } from '../../notation/document';
import type { TabDocument } from '../../notation/tabDocument';

/**
 * The texts that are being typed into, as the notation reads them. Read once, at the first key; each change then costs its
 * system, so that a key is as quick in a long file as in a short one.
 */
export class Mirrors implements vscode.Disposable {
  private readonly known = new Map<vscode.TextDocument, Document>();
  private readonly listening: vscode.Disposable;

  constructor() {
    this.listening = vscode.Disposable.from(
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        this.known.get(document)?.edit(contentChanges.map(({ range, text }) => ({ range, newText: text })));
      }),
      vscode.workspace.onDidCloseTextDocument((document) => this.known.delete(document)),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (change.affectsConfiguration('pegbox.tunings')) this.known.clear();
      }),
    );
  }

  of(document: vscode.TextDocument): TabDocument {
    let mirror = this.known.get(document);
    if (mirror?.lineCount !== document.lineCount) {
      const tunings = vscode.workspace.getConfiguration('pegbox').get<Record<string, string>>('tunings', {});
      mirror = new Document(document.getText(), tunings);
      this.known.set(document, mirror);
    }
    return mirror;
  }

  dispose(): void {
    this.listening.dispose();
    this.known.clear();
  }
}
