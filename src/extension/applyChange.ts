import * as vscode from 'vscode';
import type { TextEdit } from 'vscode-languageclient';
import type { ChangeAnswer } from '../server/requests';
import type { Report, ServiceError } from '../service/serviceApi';
import { toRange } from './ranges';
import type { ReportPages } from './reportPages';
import { isGrave, noticeText } from './reportText';

/** What a command of Pegbox gives back to whoever called it; undefined when the user called it off. */
export type ChangeOutcome =
  | {
      readonly report: Report;
      /** The address of the text after the change, when it is only shown yet. */
      readonly preview?: string;
    }
  | ServiceError
  | undefined;

export const CHANGED_MEANWHILE =
  'The text was changed while Pegbox was at work, so nothing was done. Run the command again.';

/**
 * Applies a change as one edit, which one undo takes back, and tells what became of the notes. Nothing is done when
 * the document is no longer the one that the answer was made for.
 */
export async function applyChange(
  document: vscode.TextDocument,
  answer: ChangeAnswer,
  done: string,
  pages: ReportPages,
): Promise<ChangeOutcome> {
  if ('error' in answer) return refuse(answer.error);
  if (!(await applyEdits(document, answer.version, answer.edits))) return refuse(CHANGED_MEANWHILE);
  tellReport(document.uri, answer.report, done, pages);
  return { report: answer.report };
}

/** One undo step. False when the document is no longer at the version that the edits are for; then nothing is done. */
export async function applyEdits(
  document: vscode.TextDocument,
  version: number,
  edits: readonly TextEdit[],
): Promise<boolean> {
  if (document.isClosed || document.version !== version) return false;
  if (edits.length === 0) return true;
  const edit = new vscode.WorkspaceEdit();
  edit.set(
    document.uri,
    edits.map(({ range, newText }) => new vscode.TextEdit(toRange(range), newText)),
  );
  // VS Code checks the version once more when the edit arrives.
  return vscode.workspace.applyEdit(edit);
}

export function refuse(error: string): ServiceError {
  void vscode.window.showErrorMessage(error);
  return { error };
}

/** A button of a notification. */
export interface NoticeButton {
  readonly title: string;
  readonly press: () => unknown;
}

/**
 * One line of what became of the notes, and the cautions, with a way to the whole report. Not awaited: a notification
 * stays until the user has done with it.
 */
export function tellReport(
  document: vscode.Uri,
  report: Report,
  what: string,
  pages: ReportPages,
  buttons: readonly NoticeButton[] = [],
): void {
  const page = pages.keep(document, { asked: what, report });
  const all = [...buttons, { title: 'Show report', press: () => pages.show(page) }];
  const notify = isGrave(report) ? vscode.window.showWarningMessage : vscode.window.showInformationMessage;
  void notify(noticeText(what, report), ...all.map(({ title }) => title)).then((taken) =>
    all.find(({ title }) => title === taken)?.press(),
  );
}
