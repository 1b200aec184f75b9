import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget, type PasteTabAnswer } from '../../server/requests';
import type { ServiceError } from '../../service/serviceApi';
import { applyEdits, CHANGED_MEANWHILE, refuse } from '../applyChange';
import { pasteNotice, pasteReport } from '../pasteText';
import { plainRange } from '../ranges';
import type { ReportPages } from '../reportPages';
import type { ServerRequests } from '../serverRequests';
import { findTarget } from '../target';

/** Where to paste; the text stands in for the clipboard. */
export interface PasteTarget extends CommandTarget {
  readonly text?: string;
}

/**
 * Reads the plain tab in the clipboard and puts it at the cursor, or in place of the selection, with the fields it
 * needs: one undo takes all of it back. Tells what was guessed. Gives back the answer.
 */
export function registerPasteAsTab(requests: ServerRequests, pages: ReportPages): vscode.Disposable {
  return vscode.commands.registerCommand(
    'pegbox.pasteAsTab',
    async (given?: PasteTarget): Promise<PasteTabAnswer | ServiceError | undefined> => {
      try {
        const target = await findTarget(given);
        if (target === undefined) return undefined;
        const { document, selection } = target;
        const text = given?.text ?? (await vscode.env.clipboard.readText());
        if (text.trim() === '') return refuse('The clipboard holds no text: copy a tab first.');
        const answer = await requests.ask(REQUESTS.pasteTab, {
          uri: document.uri.toString(),
          range: plainRange(selection),
          text,
        });
        if ('error' in answer) return refuse(answer.error);
        if (answer.systems === 0)
          return refuse('The clipboard holds no tab: no lines in it look like the strings of an instrument.');
        if (!(await applyEdits(document, answer.version, answer.edits))) return refuse(CHANGED_MEANWHILE);
        tell(document.uri, answer, pages);
        return answer;
      } catch (error) {
        return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    },
  );
}

/** Not awaited: a notification stays until the user has done with it. */
function tell(document: vscode.Uri, answer: PasteTabAnswer, pages: ReportPages): void {
  if (answer.guesses.length === 0) {
    void vscode.window.showInformationMessage(pasteNotice(answer));
    return;
  }
  const page = pages.keep(document, pasteReport(answer));
  const show = 'Show report';
  void vscode.window
    .showInformationMessage(pasteNotice(answer), show)
    .then((taken) => (taken === show ? pages.show(page) : undefined));
}
