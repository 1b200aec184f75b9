import * as vscode from 'vscode';
import { REQUESTS } from '../../server/requests';
import type { ServiceError } from '../../service/serviceApi';
import { backThroughStops, throughStops } from '../../service/reading/stops';
import { refuse } from '../applyChange';
import type { ServerRequests } from '../serverRequests';
import { findTarget } from '../target';
import { InStep, type Pair } from './inStep';
import { NAMES_SCHEME, namesAddress, tabOf } from './namesAddress';

/** After the last key the names follow so many milliseconds later. */
const REST = 120;

interface Page {
  text: string;
  /** Where characters went, by line. */
  stops: ReadonlyMap<number, readonly number[]>;
}

/** Texts beside their tabs with note names in place of frets; they follow as one types, cursors and scrolling in step. */
export class NoteNamesPages implements vscode.Disposable {
  /** By the address of their tab. */
  private readonly pages = new Map<string, Page>();
  private readonly waiting = new Map<string, ReturnType<typeof setTimeout>>();
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  private readonly inStep = new InStep((uri) => this.pairOf(uri));
  private readonly registrations: vscode.Disposable;

  constructor(private readonly requests: ServerRequests) {
    this.registrations = vscode.Disposable.from(
      vscode.workspace.registerTextDocumentContentProvider(NAMES_SCHEME, {
        onDidChange: this.changed.event,
        provideTextDocumentContent: (uri) => this.textAt(uri),
      }),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (contentChanges.length > 0) this.changedText(document);
      }),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (change.affectsConfiguration('pegbox.tunings'))
          for (const tab of this.pages.keys()) this.later(tab);
      }),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => {
        const tab = tabOf(uri);
        if (tab !== undefined) this.pages.delete(tab);
      }),
      vscode.commands.registerCommand('pegbox.showNoteNames', () => this.show()),
    );
  }

  dispose(): void {
    for (const timer of this.waiting.values()) clearTimeout(timer);
    this.inStep.dispose();
    this.registrations.dispose();
    this.changed.dispose();
  }

  /** Opens the names beside the tab in front; the cursor stays in the tab. */
  private async show(): Promise<{ readonly uri: string } | ServiceError | undefined> {
    try {
      const target = await findTarget(undefined);
      if (!target) return undefined;
      const tab = target.document.uri;
      const problem = await this.renew(tab.toString());
      if (problem !== undefined) return refuse(problem);
      const document = await vscode.workspace.openTextDocument(namesAddress(tab));
      await vscode.window.showTextDocument(document, {
        viewColumn: vscode.ViewColumn.Beside,
        preserveFocus: true,
        preview: false,
      });
      this.followActive();
      return { uri: document.uri.toString() };
    } catch (error) {
      return refuse(
        `Pegbox could not show the names: ${error instanceof Error ? error.message : String(error)}`,
      );
    }
  }

  private changedText(document: vscode.TextDocument): void {
    const uri = document.uri.toString();
    if (this.pages.has(uri)) this.later(uri);
    // The names have arrived in their editor: columns may have moved under the cursor.
    else if (document.uri.scheme === NAMES_SCHEME) this.followActive();
  }

  private later(tab: string): void {
    clearTimeout(this.waiting.get(tab));
    const renew = (): void => {
      this.waiting.delete(tab);
      void this.renew(tab).catch(() => undefined);
    };
    this.waiting.set(tab, setTimeout(renew, REST));
  }

  /** Asks for the names of a tab as it is now; the sentence that says why there are none. */
  private async renew(tab: string): Promise<string | undefined> {
    const answer = await this.requests.ask(REQUESTS.noteNames, { uri: tab });
    if ('error' in answer) return answer.error;
    const document = vscode.workspace.textDocuments.find(({ uri }) => uri.toString() === tab);
    // A newer text is on its way, and is asked about by itself.
    if (this.pages.has(tab) && document && document.version !== answer.version) return undefined;
    const stops = new Map(answer.lines.map((line) => [line.line, line.stops]));
    const before = this.pages.get(tab)?.text;
    this.pages.set(tab, { text: answer.text, stops });
    if (before !== answer.text) this.changed.fire(namesAddress(vscode.Uri.parse(tab, true)));
    return undefined;
  }

  /** After a reload of the window a page is asked for before its tab was. */
  private async textAt(uri: vscode.Uri): Promise<string> {
    const tab = tabOf(uri) ?? '';
    if (!this.pages.has(tab)) {
      await vscode.workspace.openTextDocument(vscode.Uri.parse(tab, true));
      const problem = await this.renew(tab);
      if (problem !== undefined) return problem;
    }
    return this.pages.get(tab)?.text ?? '';
  }

  private pairOf(uri: string): Pair | undefined {
    const own = this.pages.get(uri);
    if (own) {
      const other = namesAddress(vscode.Uri.parse(uri, true)).toString();
      return { other, through: (place) => moved(place, own, throughStops) };
    }
    const tab = tabOf(vscode.Uri.parse(uri, true));
    const page = tab === undefined ? undefined : this.pages.get(tab);
    return tab !== undefined && page
      ? { other: tab, through: (place) => moved(place, page, backThroughStops) }
      : undefined;
  }

  private followActive(): void {
    const { activeTextEditor } = vscode.window;
    if (activeTextEditor) this.inStep.cursor(activeTextEditor);
  }
}

function moved(place: vscode.Position, { stops }: Page, through: typeof throughStops): vscode.Position {
  return place.with({ character: through(stops.get(place.line) ?? [], place.character) });
}
