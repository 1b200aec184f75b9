import * as vscode from 'vscode';
import { handTable } from '../handTable';
import type { HelpPages } from '../helpPages';

const PAGE = '/The hand.md';

/** Shows every constant of the hand model on a page that can only be read. */
export function registerShowHandTable(pages: HelpPages): vscode.Disposable {
  return vscode.commands.registerCommand('pegbox.showHandTable', () => {
    pages.put(PAGE, handTable());
    return pages.show(PAGE);
  });
}
