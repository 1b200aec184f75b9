import * as vscode from 'vscode';
import type { ChangeAnswer, CommandTarget } from '../server/requests';
import { applyEdits, CHANGED_MEANWHILE, refuse, tellReport, type ChangeOutcome } from './applyChange';
import type { ChangeTools } from './changeCommand';
import { plainPosition } from './ranges';
import { isGrave } from './reportText';
import type { RequestedChange } from './requestedChange';
import { findTarget } from './target';

/** Where something is to be written. */
export interface WritePlace {
  readonly document: vscode.TextDocument;
  readonly uri: string;
  readonly position: { readonly line: number; readonly character: number };
}

export interface WriteCommand<Given> {
  readonly command: string;
  /** Asks for what the caller left out; undefined when the user leaves. */
  readonly request: (place: WritePlace, given: Given | undefined) => Promise<WriteRequest | undefined>;
}

export interface WriteRequest extends Pick<RequestedChange, 'asked' | 'done' | 'after'> {
  readonly ask: (position: WritePlace['position']) => Promise<ChangeAnswer>;
}

/** How long the status bar tells what was written, in milliseconds. */
const TOLD_FOR = 6000;

/**
 * Registers a command that writes something at the cursor, or at the start of the range that its caller names. It is made
 * at once, as typing is, with one undo; a caller may ask for a preview. The cursor goes where a player writes on. The status bar tells what was
 * written; what found no place is told so that it cannot be overlooked.
 */
export function writeCommand<Given extends CommandTarget>(
  { command, request }: WriteCommand<Given>,
  { pages, previews }: Pick<ChangeTools, 'pages' | 'previews'>,
): vscode.Disposable {
  return vscode.commands.registerCommand(command, async (given?: Given): Promise<ChangeOutcome> => {
    try {
      const target = await findTarget(given);
      if (target === undefined) return undefined;
      const { document, selection } = target;
      const position = plainPosition(selection.start);
      const wanted = await request({ document, uri: document.uri.toString(), position }, given);
      if (wanted === undefined) return undefined;
      if (given?.preview === true) {
        const { ask, ...words } = wanted;
        const range = { start: position, end: position };
        return await previews.open(document, range, {
          ...words,
          ask: (at) => ask(at?.start ?? position),
        });
      }
      const answer = await wanted.ask(position);
      if ('error' in answer) return refuse(answer.error);
      if (!(await applyEdits(document, answer.version, answer.edits))) return refuse(CHANGED_MEANWHILE);
      const { report, goesOn } = answer;
      if (goesOn) goTo(document, goesOn);
      if (isGrave(report)) tellReport(document.uri, report, wanted.done, pages);
      else vscode.window.setStatusBarMessage(report.remarks[0] ?? wanted.done, TOLD_FOR);
      return { report };
    } catch (error) {
      return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
    }
  });
}

/** Puts the cursor somewhere in the editor that shows a document, if one does. */
function goTo(document: vscode.TextDocument, { line, character }: WritePlace['position']): void {
  const editor = vscode.window.visibleTextEditors.find((one) => one.document === document);
  if (editor === undefined) return;
  const place = new vscode.Position(line, character);
  editor.selection = new vscode.Selection(place, place);
  editor.revealRange(editor.selection);
}
