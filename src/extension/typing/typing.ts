import * as vscode from 'vscode';
import type { Cursor, TypedKey } from '../../service/typing/typedKey';
import { typeOver } from '../../service/typing/typeOver';
import { toRange } from '../ranges';
import { KeyQueue } from './keyQueue';
import { KeyRouting } from './keyRouting';
import type { Mirrors } from './mirrors';

/** As often a key is tried anew when something else has changed the text meanwhile. */
const TRIES = 20;
/** A notice in the status bar stays so long, in milliseconds. */
const NOTICE = 6000;

/** The editor's commands that may stand in the queue. */
const MOVES: readonly string[] = [
  ...['Left', 'Right', 'Up', 'Down', 'Home', 'End'].flatMap((to) => [`cursor${to}`, `cursor${to}Select`]),
  'undo',
  'redo',
];

/**
 * Takes the keys of a tab one after the other: a key is decided when its turn comes, when everything before it is done and
 * the cursor is where it will be. On a staff it types over it; elsewhere the editor does what it always does.
 */
export class Typing implements vscode.Disposable {
  private readonly queue = new KeyQueue((error) =>
    this.tell(`Pegbox could not take a key: ${reason(error)}`),
  );
  private readonly routing = new KeyRouting();
  private notice: vscode.Disposable | undefined;
  private readonly registered: vscode.Disposable;

  constructor(private readonly mirrors: Mirrors) {
    this.routing.pending = () => this.queue.pending;
    const key = (name: string, work: (argument: unknown) => Promise<void>): vscode.Disposable =>
      vscode.commands.registerCommand(`pegbox.typing.${name}`, (argument: unknown) => {
        this.routing.heard();
        return this.queue.push(() => work(argument));
      });
    this.registered = vscode.Disposable.from(
      key('sign', async (text) => {
        if (typeof text === 'string' && text !== '') await this.take({ text }, 'type', { text });
      }),
      key('backspace', () => this.take('backspace', 'deleteLeft')),
      key('delete', () => this.take('delete', 'deleteRight')),
      key('run', async (command) => {
        if (typeof command === 'string' && MOVES.includes(command))
          await vscode.commands.executeCommand(command);
      }),
    );
  }

  private async take(key: TypedKey, otherwise: string, ...more: readonly unknown[]): Promise<void> {
    const editor = vscode.window.activeTextEditor;
    this.notice?.dispose();
    for (let tries = 0; tries < TRIES; tries++) {
      const done =
        editor?.document.languageId === 'pegbox'
          ? typeOver(this.mirrors.of(editor.document), editor.selections.map(cursorOf), key)
          : undefined;
      if (!editor || done?.kind !== 'staff') {
        // What it needs to know of the cursor is here before its answer.
        await vscode.commands.executeCommand(otherwise, ...more);
        return;
      }
      const { edits, cursors, notice } = done;
      const isDone =
        edits.length === 0 ||
        (await editor.edit((builder) => {
          for (const { range, newText } of edits) builder.replace(toRange(range), newText);
        }));
      // False: something else has changed the text, which is known by now.
      if (!isDone) continue;
      editor.selections = cursors.map(selectionOf);
      if (cursors[0]) editor.revealRange(toRange({ start: cursors[0].active, end: cursors[0].active }));
      if (notice !== undefined) this.tell(notice);
      return;
    }
    this.tell('A key was not written: the text was being changed all the while. Press it again.');
  }

  private tell(words: string): void {
    this.notice?.dispose();
    this.notice = vscode.window.setStatusBarMessage(words, NOTICE);
  }

  dispose(): void {
    this.registered.dispose();
    this.routing.dispose();
    this.notice?.dispose();
  }
}

function cursorOf({ anchor, active }: vscode.Selection): Cursor {
  return { anchor, active };
}

function selectionOf({ anchor, active }: Cursor): vscode.Selection {
  return new vscode.Selection(anchor.line, anchor.character, active.line, active.character);
}

function reason(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
