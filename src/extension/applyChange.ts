import * as vscode from 'vscode';
import type { ChangeAnswer } from '../server/requests';
import type { Report, ServiceError } from '../service/serviceApi';
import { toRange } from './ranges';
import type { ReportPages } from './reportPages';
import { countsText } from './reportText';

/** What a command of Pegbox gives back to whoever called it; undefined when the user called it off. */
export type ChangeOutcome = { readonly report: Report } | ServiceError | undefined;

const CHANGED_MEANWHILE =
  'The text was changed while Pegbox was at work, so nothing was done. Run the command again.';

/**
 * Applies a change as one edit, which one undo takes back, and tells what became of the notes. Nothing is done when
 * the document is no longer the one that the answer was made for.
 */
export async function applyChange(
  document: vscode.TextDocument,
  answer: ChangeAnswer,
  asked: string,
  pages: ReportPages,
): Promise<ChangeOutcome> {
  if ('error' in answer) return refuse(answer.error);
  if (document.isClosed || document.version !== answer.version) return refuse(CHANGED_MEANWHILE);
  if (answer.edits.length > 0) {
    const edit = new vscode.WorkspaceEdit();
    edit.set(
      document.uri,
      answer.edits.map(({ range, newText }) => new vscode.TextEdit(toRange(range), newText)),
    );
    // VS Code checks the version once more when the edit arrives.
    if (!(await vscode.workspace.applyEdit(edit))) return refuse(CHANGED_MEANWHILE);
  }
  tell(document, answer.report, asked, pages);
  return { report: answer.report };
}

export function refuse(error: string): ServiceError {
  void vscode.window.showErrorMessage(error);
  return { error };
}

/** Not awaited: a notification stays until the user has done with it. */
function tell(document: vscode.TextDocument, report: Report, asked: string, pages: ReportPages): void {
  const page = pages.keep(document.uri, { asked, report });
  const show = 'Show report';
  const notify =
    report.unplaced.length > 0 ? vscode.window.showWarningMessage : vscode.window.showInformationMessage;
  void notify(`${asked}: ${countsText(report)}.`, show).then((taken) =>
    taken === show ? pages.show(page) : undefined,
  );
}
