import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import type { ClientOptions } from '../server/requests';
import { registerChordChart } from './commands/chordChart';
import { registerCopyAsPlainText } from './commands/copyAsPlainText';
import { registerCompare } from './commands/compare';
import { registerCompareWithGit } from './commands/compareWithGit';
import { registerFindBySound } from './commands/findBySound';
import { FoundView } from './library/foundView';
import { LibraryView } from './library/libraryView';
import { registerConvert } from './commands/convert';
import { registerConvertIntoNewPart } from './commands/convertIntoNewPart';
import { registerFitSinger } from './commands/fitSinger';
import { registerInsertExercise } from './commands/insertExercise';
import { registerFindShapes } from './commands/findShapes';
import { registerFillChords } from './commands/fillChords';
import { registerColumnTools } from './commands/columnTools';
import { registerInsertSystem } from './commands/insertSystem';
import { registerMoveCapo } from './commands/moveCapo';
import { registerNewTab } from './commands/newTab';
import { registerOpenExample } from './commands/openExample';
import { registerOpenHelp } from './commands/openHelp';
import { registerPasteAsTab } from './commands/pasteAsTab';
import { registerRefinger } from './commands/refinger';
import { registerRingingStrings } from './commands/ringingStrings';
import { Handouts, registerSaveHandout } from './commands/saveHandout';
import { registerSecondGuitar } from './commands/secondGuitar';
import { registerShowGrip } from './commands/showGrip';
import { registerShowHandTable } from './commands/showHandTable';
import { registerShowTuningSheet } from './commands/showTuningSheet';
import { registerSimplify } from './commands/simplify';
import { registerSuit } from './commands/suit';
import { registerTranspose } from './commands/transpose';
import { registerWriteChords } from './commands/writeChords';
import { registerWriteNotes } from './commands/writeNotes';
import { HELP_LINK, HelpPages } from './helpPages';
import { NoteNamesPages } from './noteNames/noteNamesPages';
import { registerPasteChoice } from './pasteProvider';
import { registerPreviewCommands } from './preview/previewCommands';
import { Previews } from './preview/previews';
import { ReportPages } from './reportPages';
import { ServerRequests } from './serverRequests';
import { registerTyping } from './typing/registerTyping';
import { LastPlace } from './views/lastPlace';
import { registerNeck } from './views/neckView';
import { ShapesPanel } from './views/shapesPanel';
import { SheetPanel } from './views/sheetPanel';

export const CLIENT_ID = 'pegbox';
export const CLIENT_NAME = 'Pegbox';

/** What both hosts tell the client library. */
export function clientOptions(): LanguageClientOptions {
  const initializationOptions = (): ClientOptions => ({
    settings: plain(vscode.workspace.getConfiguration().get('pegbox')),
    helpLink: HELP_LINK,
    commands: true,
    // Asked for whole files, VS Code would want every token of the file again after each keystroke.
    tokensByRange: true,
    pictures: true,
  });
  // By language alone, whatever the scheme: the two texts of a preview are to have colours, hovers and diagnostics too.
  return { documentSelector: [{ language: 'pegbox' }], initializationOptions };
}

/** Registers the commands and starts the server. The commands are there at once; they wait for the server. */
export function startPegbox(context: vscode.ExtensionContext, client: BaseLanguageClient): void {
  const requests = new ServerRequests(client);
  const pages = new ReportPages();
  const previews = new Previews(pages);
  const help = new HelpPages(context.extensionUri);
  const places = new LastPlace();
  const handouts = new Handouts(requests, places);
  const sheet = new SheetPanel(context.extensionUri, requests, places, handouts);
  const shapes = new ShapesPanel(context.extensionUri, requests, places);
  const found = new FoundView();
  const tools = { requests, pages, previews, memory: context.globalState };
  context.subscriptions.push(
    pages,
    previews,
    places,
    registerConvert(tools),
    registerConvertIntoNewPart(tools),
    registerRefinger(tools),
    registerSimplify(tools),
    registerFillChords(tools),
    registerSecondGuitar(tools),
    registerChordChart(requests),
    registerSuit(tools, help),
    registerFitSinger(tools, help),
    found,
    registerFindBySound(requests, found),
    new LibraryView(requests, context.workspaceState),
    registerCompare(requests, help),
    registerCompareWithGit(requests, help),
    registerRingingStrings(requests, help),
    registerTranspose(tools),
    registerMoveCapo(tools),
    registerNewTab(tools),
    ...registerColumnTools(tools),
    registerInsertSystem(tools),
    registerWriteChords(tools),
    new NoteNamesPages(requests),
    registerOpenExample(context.extensionUri),
    registerWriteNotes(tools),
    registerPasteAsTab(requests, pages),
    registerCopyAsPlainText(requests),
    registerPasteChoice(requests),
    registerInsertExercise(tools),
    registerPreviewCommands(previews, requests),
    registerShowGrip(requests),
    registerNeck(context.extensionUri, requests, places),
    registerTyping(tools),
    registerOpenHelp(),
    registerShowHandTable(help),
    sheet,
    registerShowTuningSheet(sheet),
    shapes,
    registerFindShapes(shapes),
    registerSaveHandout(handouts),
    help.register(),
  );
  client.start().catch((error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    void vscode.window.showErrorMessage(`Pegbox's language server did not start: ${reason}`);
  });
}

/** VS Code's settings are live objects; what goes over the wire is plain. */
function plain(value: unknown): unknown {
  return value === undefined ? undefined : JSON.parse(JSON.stringify(value));
}
