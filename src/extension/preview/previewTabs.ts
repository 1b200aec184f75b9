import * as vscode from 'vscode';

/** The tabs that show a text of a preview, in a diff or alone. */
export function tabsShowing(fits: (uri: vscode.Uri) => boolean): vscode.Tab[] {
  return vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter((tab) => textsOf(tab).some((uri) => fits(uri)));
}

/** The texts that a tab shows: two in a diff. */
export function textsOf({ input }: vscode.Tab): readonly vscode.Uri[] {
  if (input instanceof vscode.TabInputTextDiff) return [input.original, input.modified];
  return input instanceof vscode.TabInputText ? [input.uri] : [];
}

/** Shows a document where it is shown already, else in the active group. */
export async function showWhereItIs(document: vscode.TextDocument): Promise<vscode.TextEditor> {
  const uri = document.uri.toString();
  const tab = vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .find(({ input }) => input instanceof vscode.TabInputText && input.uri.toString() === uri);
  return vscode.window.showTextDocument(document, {
    viewColumn: tab?.group.viewColumn ?? vscode.ViewColumn.Active,
  });
}
