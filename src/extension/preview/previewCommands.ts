import * as vscode from 'vscode';
import { refuse } from '../applyChange';
import type { ServerRequests } from '../serverRequests';
import { offeredChange, pickOffer } from './offers';
import type { Preview } from './preview';
import type { Previews } from './previews';
import { Taking, type PreviewPlace } from './taking';

const NO_PREVIEW =
  'There is no preview here: run a command that changes a passage first, such as a conversion.';

/** The actions of a preview's title bar. Each takes the address of one of its texts, else the active tab is meant. */
export function registerPreviewCommands(previews: Previews, requests: ServerRequests): vscode.Disposable {
  const taking = new Taking(previews, requests);
  const command = (name: string, run: (preview: Preview) => unknown): vscode.Disposable =>
    vscode.commands.registerCommand(name, async (address?: unknown) => {
      const preview = previews.find(address) ?? previews.find();
      if (preview === undefined) return refuse(NO_PREVIEW);
      try {
        return await run(preview);
      } catch (error) {
        return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    });
  return vscode.Disposable.from(
    command('pegbox.takeAll', (preview) => taking.all(preview)),
    command('pegbox.takeSection', (preview) => taking.section(preview, cursorIn(preview))),
    command('pegbox.nextAlternative', (preview) => previews.next(preview)),
    command('pegbox.makeItFit', async (preview) => {
      if (preview.offers.length === 0) return refuse('There is no other request that would leave out less.');
      const offer = await pickOffer(preview.offers);
      if (offer === undefined) return undefined;
      const uri = preview.document.uri.toString();
      return previews.instead(preview, offeredChange(preview.change, offer, requests, uri));
    }),
    command('pegbox.showReport', (preview) => previews.showReport(preview)),
  );
}

/** The cursor in the text that has the focus, else in the text after the change. */
function cursorIn({ addresses: { before, after } }: Preview): PreviewPlace {
  const at = (uri: vscode.Uri, editors: readonly vscode.TextEditor[]): PreviewPlace | undefined => {
    const editor = editors.find(({ document }) => document.uri.toString() === uri.toString());
    return editor && { uri, position: editor.selection.active };
  };
  const { activeTextEditor, visibleTextEditors } = vscode.window;
  const focused = activeTextEditor ? [activeTextEditor] : [];
  return (
    at(before, focused) ??
    at(after, focused) ??
    at(after, visibleTextEditors) ?? { uri: after, position: new vscode.Position(0, 0) }
  );
}
