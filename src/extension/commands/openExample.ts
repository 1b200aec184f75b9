import * as vscode from 'vscode';
import { refuse } from '../applyChange';

const EXAMPLE = 'bees-on-the-water.pegbox';
/** What the walkthrough does with the example, and the step that it belongs to. */
const STEPS: ReadonlyMap<unknown, string> = new Map([
  ['editor.action.showHover', 'read'],
  ['pegbox.showTuningSheet', 'tuning'],
  ['pegbox.convert', 'convert'],
  ['pegbox.showNoteNames', 'share'],
  ['pegbox.saveHandout', 'share'],
]);

/**
 * Opens one of the demo songs as a tab of its own, with the cursor on a fret, and goes on with a step of the walkthrough
 * there: its page is no tab, so that the commands would find nothing to work on.
 */
export function registerOpenExample(extension: vscode.Uri): vscode.Disposable {
  let opened: vscode.TextDocument | undefined;
  return vscode.commands.registerCommand('pegbox.openExample', async (step?: unknown) => {
    try {
      if (!opened || opened.isClosed) {
        const file = vscode.Uri.joinPath(extension, 'media', 'demo', EXAMPLE);
        const content = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
        opened = await vscode.workspace.openTextDocument({ language: 'pegbox', content });
      }
      const cursor = firstFret(opened);
      await vscode.window.showTextDocument(opened, {
        preview: false,
        selection: new vscode.Range(cursor, cursor),
      });
      const name = STEPS.get(step);
      if (name === undefined || typeof step !== 'string') return;
      // The editor ticks a step at a command that it runs itself, and hears nothing of those that an extension runs.
      await vscode.commands.executeCommand('setContext', `pegbox.walkthrough.${name}`, true);
      await vscode.commands.executeCommand(step);
    } catch (error) {
      refuse(`Pegbox could not open the example: ${error instanceof Error ? error.message : String(error)}`);
    }
  });
}

/** The first fret that is no open string. */
function firstFret(document: vscode.TextDocument): vscode.Position {
  const text = document.getText();
  const found = /^[A-G][#b]?\d *\|[-0|:h.]*(?=[1-9])/m.exec(text);
  return document.positionAt(found ? found.index + found[0].length : 0);
}
