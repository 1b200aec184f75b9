import * as vscode from 'vscode';

/** Moves the cursor, and waits until the window says so too: until then it may tell of where the cursor was before. */
export async function cursorTo(editor: vscode.TextEditor, line: number, character: number): Promise<void> {
  const place = new vscode.Position(line, character);
  if (editor.selection.isEmpty && editor.selection.active.isEqual(place)) return;
  let listening: vscode.Disposable | undefined;
  const moved = new Promise<void>((resolve) => {
    listening = vscode.window.onDidChangeTextEditorSelection(({ selections }) => {
      if (selections[0]?.active.isEqual(place)) resolve();
    });
  });
  editor.selection = new vscode.Selection(place, place);
  await moved;
  listening?.dispose();
}
