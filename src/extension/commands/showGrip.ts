import * as vscode from 'vscode';
import { REQUESTS } from '../../server/requests';
import type { GripAnswer } from '../../service/grip/gripAnswer';
import { GripPage } from '../gripPage';
import type { ServerRequests } from '../serverRequests';

/** The cursor rests this long, in milliseconds, before the page follows it. */
const REST = 80;

/** Shows how the hand holds the column at the cursor, in a page that follows the cursor as long as it is seen. */
export function registerShowGrip(requests: ServerRequests): vscode.Disposable {
  const page = new GripPage();
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;

  const ask = async (editor: vscode.TextEditor): Promise<GripAnswer | null | undefined> => {
    const turn = ++asked;
    const { line, character } = editor.selection.active;
    const uri = editor.document.uri.toString();
    const answer = await requests.ask(REQUESTS.grip, { uri, position: { line, character } });
    // A later question has been asked meanwhile.
    return turn === asked ? answer : undefined;
  };

  const follow = async (editor: vscode.TextEditor): Promise<void> => {
    const answer = await ask(editor);
    if (answer && page.visible) page.show(answer);
  };

  return vscode.Disposable.from(
    page,
    vscode.commands.registerCommand('pegbox.showGrip', async () => {
      const editor = vscode.window.activeTextEditor;
      const answer = editor?.document.languageId === 'pegbox' ? await ask(editor) : null;
      if (answer === undefined) return;
      if (answer === null) {
        void vscode.window.showInformationMessage(
          'No string is stopped or open here. Put the cursor on a fret, or on a column of a system.',
        );
        return;
      }
      page.show(answer);
      page.reveal();
    }),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (!page.visible || textEditor.document.languageId !== 'pegbox') return;
      clearTimeout(waiting);
      waiting = setTimeout(() => {
        // A question that cannot be answered leaves the page as it is; the client reports its own failures.
        follow(textEditor).catch(() => undefined);
      }, REST);
    }),
    new vscode.Disposable(() => clearTimeout(waiting)),
  );
}
