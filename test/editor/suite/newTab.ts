import * as vscode from 'vscode';

/** A short piece of our own without a mistake. */
export const lantern = `title:  Lantern Lane
tuning: DADGAD
key:    D

[Verse]
D4 |0-------0-------|
A3 |----------------|
G3 |----------------|
D3 |----4-------4---|
A2 |----------------|
D2 |0-------0-------|
`;

/** The same with a capo that no one can read. */
export const badCapo = lantern.replace('key:    D', 'capo:   banana');

/** The same with a capo whose word is misspelled, which a mend puts right. */
export const misspelled = lantern.replace('key:    D', 'capoo:  2');

/** Where the first fret 4 stands in it. */
export const fret4 = new vscode.Position(8, 8);

/** A new tab in an editor, saved nowhere. */
export async function newTab(content: string): Promise<vscode.TextEditor> {
  const document = await vscode.workspace.openTextDocument({ language: 'pegbox', content });
  // No preview: the next one would take its place and close it.
  return vscode.window.showTextDocument(document, { preview: false });
}

/** Closes what the tests opened, without asking whether to save it. */
export async function closeTabs(): Promise<void> {
  while (vscode.window.tabGroups.all.some(({ tabs }) => tabs.length > 0))
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
}
