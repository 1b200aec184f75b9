import * as vscode from 'vscode';
import type { ChangeAnswer } from '../../server/requests';
import { applyEdits, CHANGED_MEANWHILE } from '../applyChange';
import type { TabPlace } from './lastPlace';

/** Gives the focus back to the text, with the cursor where it stands. */
export async function focusText({ document, viewColumn }: TabPlace): Promise<vscode.TextEditor> {
  return vscode.window.showTextDocument(document, viewColumn === undefined ? {} : { viewColumn });
}

/**
 * Makes a change that a page asked for: one edit, one undo; the focus is back in the text afterwards. The cursor stays
 * where it was, so that several frets can be put into one column.
 * @returns the sentence that says why nothing was done; undefined when it was
 */
export async function writeBack(place: TabPlace, answer: ChangeAnswer): Promise<string | undefined> {
  if ('error' in answer) return answer.error;
  const editor = await focusText(place);
  const cursor = editor.selection;
  if (!(await applyEdits(place.document, answer.version, answer.edits))) return CHANGED_MEANWHILE;
  editor.selection = cursor; // an edit at the cursor would take it along
  return undefined;
}

/** Takes the last change of a tab back. VS Code's undo works on what has the focus (vscode#175297), so the text gets it. */
export async function undoIn(place: TabPlace): Promise<void> {
  await focusText(place);
  await vscode.commands.executeCommand('undo');
}
