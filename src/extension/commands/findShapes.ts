import * as vscode from 'vscode';
import { refuse } from '../applyChange';
import type { ShapesPanel } from '../views/shapesPanel';

export interface FindShapesArguments {
  /** Left out: the one at the cursor, else what stood in the box. */
  readonly chord?: string;
}

export interface SaveShapeArguments {
  /** As the page shows it, `x 3 2 0 1 0`; the chosen one when it is left out. */
  readonly shape?: string;
  /** The address of the file to write; asked for when it is left out. */
  readonly to?: string;
}

/** Registers what opens the shapes of a chord, and what saves the picture of the chosen one. */
export function registerFindShapes(panel: ShapesPanel): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand('pegbox.findShapes', async ({ chord }: FindShapesArguments = {}) =>
      panel.show(chord),
    ),
    vscode.commands.registerCommand('pegbox.saveShape', async ({ shape, to }: SaveShapeArguments = {}) => {
      try {
        const words = await panel.savePicture(
          shape,
          to === undefined ? undefined : vscode.Uri.parse(to, true),
        );
        if (words !== undefined) void vscode.window.showInformationMessage(words);
        return words;
      } catch (error) {
        return refuse(`Pegbox could not save it: ${error instanceof Error ? error.message : String(error)}`);
      }
    }),
  );
}
