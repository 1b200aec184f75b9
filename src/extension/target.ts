import * as vscode from 'vscode';
import type { CommandTarget } from '../server/requests';
import { PREVIEW_SCHEME } from './preview/previewAddress';
import { toRange } from './ranges';

/** Where a command works. */
export interface Target {
  readonly document: vscode.TextDocument;
  /** The range that the caller named. */
  readonly range: vscode.Range | undefined;
  /** What is selected in the editor, possibly nothing but a cursor. */
  readonly selection: vscode.Range;
}

/** The document and range that the argument names, else those of the active editor; undefined without a tab. */
export async function findTarget(argument: CommandTarget | undefined): Promise<Target | undefined> {
  const editor = vscode.window.activeTextEditor;
  const uri = argument?.uri === undefined ? editor?.document.uri : vscode.Uri.parse(argument.uri, true);
  if (uri === undefined) return noTab();
  if (uri.scheme === PREVIEW_SCHEME) {
    void vscode.window.showErrorMessage(
      'This is a preview and stays as it is: take it first, or run the command in the tab itself.',
    );
    return undefined;
  }
  // Opening anew a document that is shown would keep it in memory for minutes after its tab is closed.
  const document =
    editor?.document.uri.toString() === uri.toString()
      ? editor.document
      : await vscode.workspace.openTextDocument(uri);
  if (document.languageId !== 'pegbox') return noTab();
  const range = argument?.range === undefined ? undefined : toRange(argument.range);
  const shown = editor?.document === document ? editor.selection : undefined;
  return { document, range, selection: range ?? shown ?? new vscode.Range(0, 0, 0, 0) };
}

function noTab(): undefined {
  void vscode.window.showErrorMessage(
    'This works in a tab: open a file that ends in .pegbox and run it there.',
  );
  return undefined;
}

const TARGET: readonly string[] = ['uri', 'range', 'preview'] satisfies (keyof CommandTarget)[];

/** What a caller said apart from where to work. */
export function apartFromTarget<Given extends CommandTarget>(
  given: Given | undefined,
): Partial<Omit<Given, keyof CommandTarget>> {
  const said = Object.entries(given ?? {}).filter(([name]) => !TARGET.includes(name));
  return Object.fromEntries(said) as Partial<Omit<Given, keyof CommandTarget>>;
}
