import * as vscode from 'vscode';
import type { SheetPanel } from '../views/sheetPanel';

/** Opens the tuning sheet beside the text; the cursor stays in the text. */
export function registerShowTuningSheet(panel: SheetPanel): vscode.Disposable {
  return vscode.commands.registerCommand('pegbox.showTuningSheet', () => panel.show());
}
