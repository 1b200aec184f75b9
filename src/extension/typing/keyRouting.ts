import * as vscode from 'vscode';
import { parseLine } from '../../notation/parseLine';

/** So long no key comes, in milliseconds, before text keys are given back to the editor. */
const REST = 30;

/**
 * Says which way text keys go. On a string line they come to Pegbox. Elsewhere they go to the editor directly, with all that
 * belongs to them there (the keyboard's own layout, Caps Lock, composed letters); digits, with which most begins that is
 * written on a staff, always come. A key goes directly only when none can still
 * be on its way, which it would overtake. Every key that comes to Pegbox sets `pegbox.typing.fresh` in the window
 * itself, before anything else happens; from then on all text keys come here until the cursor is known again:
 *
 * 1. `free` is taken back, so that all text keys come here whatever `fresh` says;
 * 2. `fresh` is taken back. A key pressed before that has been heard of when the answer is here; then all begins again;
 *    one pressed later sets it again, and so comes here, too;
 * 3. outside string lines `free` is given.
 */
export class KeyRouting implements vscode.Disposable {
  private keys = 0;
  private waiting: ReturnType<typeof setTimeout> | undefined;
  private isFree = false;
  private readonly listening: vscode.Disposable;

  constructor() {
    const look = (): void => this.settleSoon();
    this.listening = vscode.Disposable.from(
      vscode.window.onDidChangeTextEditorSelection(look),
      vscode.window.onDidChangeActiveTextEditor(look),
      vscode.workspace.onDidChangeTextDocument(look),
    );
    this.settleSoon();
  }

  /** A key has come. */
  heard(): void {
    this.keys++;
    this.settleSoon();
  }

  /** How many keys still wait for their turn. */
  pending = (): number => 0;

  private settleSoon(): void {
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => {
      this.settle().catch(() => undefined);
    }, REST);
  }

  private async settle(): Promise<void> {
    if (this.pending() > 0) return this.settleSoon();
    const keys = this.keys;
    const isProse = !standsOnStaff();
    if (isProse && this.isFree && this.settledKeys === keys) return;
    await this.free(false);
    await setContext('pegbox.typing.fresh', false);
    if (this.keys !== keys || this.pending() > 0) return this.settleSoon();
    this.settledKeys = keys;
    if (!standsOnStaff()) await this.free(true);
  }

  private settledKeys = -1;

  private async free(free: boolean): Promise<void> {
    if (this.isFree === free) return;
    this.isFree = free;
    await setContext('pegbox.typing.free', free);
  }

  dispose(): void {
    clearTimeout(this.waiting);
    this.listening.dispose();
  }
}

function standsOnStaff(): boolean {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== 'pegbox') return false;
  return editor.selections.some(
    ({ active }) => parseLine(editor.document.lineAt(active.line).text).kind === 'string',
  );
}

async function setContext(key: string, value: boolean): Promise<void> {
  await vscode.commands.executeCommand('setContext', key, value);
}
