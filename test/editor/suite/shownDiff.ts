import * as vscode from 'vscode';
import type { Report } from '../../../src/service/serviceApi';
import { waitFor } from './waitFor';

/** What a command that changes a passage gives back. */
export interface Outcome {
  readonly report?: Report;
  readonly preview?: string;
  readonly error?: string;
}

export function run(command: string, ...given: unknown[]): Thenable<Outcome | undefined> {
  return vscode.commands.executeCommand<Outcome | undefined>(command, ...given);
}

/** The two texts of a preview. */
export interface Shown {
  readonly before: vscode.TextDocument;
  readonly after: vscode.TextDocument;
}

/** The diff of the active tab, once both its texts are there. */
export async function shownDiff(): Promise<Shown> {
  const input = await waitFor(() => {
    const active = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
    return active instanceof vscode.TabInputTextDiff && active;
  }, 'diff');
  const text = (uri: vscode.Uri): Thenable<vscode.TextDocument> => vscode.workspace.openTextDocument(uri);
  return { before: await text(input.original), after: await text(input.modified) };
}

export function diffs(): vscode.Tab[] {
  return vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter(({ input }) => input instanceof vscode.TabInputTextDiff);
}

export async function backInTab(document: vscode.TextDocument): Promise<void> {
  await waitFor(() => diffs().length === 0, 'end of the preview');
  await waitFor(() => vscode.window.activeTextEditor?.document === document, 'the tab itself');
}

export async function undoneOnce(document: vscode.TextDocument, text: string): Promise<void> {
  await vscode.commands.executeCommand('undo');
  await waitFor(() => document.getText() === text, 'undo');
}
