import * as vscode from 'vscode';
import { moveOnStaff, MOVES, type Move } from '../../service/typing/moves';
import { shiftNote, type Shift } from '../../service/typing/shiftNote';
import { refuse } from '../applyChange';
import { toRange } from '../ranges';
import type { Mirrors } from './mirrors';

const SHIFTS: Readonly<Record<string, Shift>> = {
  noteToStringAbove: 'string above',
  noteToStringBelow: 'string below',
  noteOctaveUp: 'octave up',
  noteOctaveDown: 'octave down',
};

/** Registers the moves on a staff, and what takes the note at the cursor to another string or octave. */
export function registerStaffCommands(mirrors: Mirrors): vscode.Disposable {
  const moves = MOVES.map((move) =>
    vscode.commands.registerCommand(`pegbox.move.${move}`, () => go(mirrors, move)),
  );
  const shifts = Object.entries(SHIFTS).map(([name, shift]) =>
    vscode.commands.registerCommand(`pegbox.${name}`, () => take(mirrors, shift)),
  );
  return vscode.Disposable.from(...moves, ...shifts);
}

function tab(): vscode.TextEditor | undefined {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId === 'pegbox') return editor;
  refuse('This works in a tab: open a file that ends in .pegbox and run it there.');
  return undefined;
}

function go(mirrors: Mirrors, move: Move): void {
  const editor = tab();
  if (!editor) return;
  const document = mirrors.of(editor.document);
  editor.selections = editor.selections.map(({ active }) => {
    const to = moveOnStaff(document, active, move) ?? active;
    return new vscode.Selection(to.line, to.character, to.line, to.character);
  });
  editor.revealRange(editor.selection);
}

async function take(mirrors: Mirrors, shift: Shift): Promise<void> {
  const editor = tab();
  if (!editor) return;
  const { active } = editor.selection;
  const change = shiftNote(mirrors.of(editor.document), active, shift);
  if ('error' in change) {
    refuse(change.error);
    return;
  }
  const isDone = await editor.edit((builder) => {
    for (const { range, newText } of change.edits) builder.replace(toRange(range), newText);
  });
  if (!isDone) {
    refuse('The text was changed meanwhile, so nothing was done. Run the command again.');
    return;
  }
  const [said] = change.report.remarks;
  if (said !== undefined) void vscode.window.setStatusBarMessage(said, 4000);
}
