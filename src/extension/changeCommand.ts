import * as vscode from 'vscode';
import type { Range } from 'vscode-languageclient';
import type { CommandTarget } from '../server/requests';
import { applyChange, refuse, type ChangeOutcome } from './applyChange';
import { pickPassage } from './pickPassage';
import type { Previews } from './preview/previews';
import { plainRange } from './ranges';
import type { ReportPages } from './reportPages';
import type { RequestedChange } from './requestedChange';
import type { ServerRequests } from './serverRequests';
import { findTarget } from './target';

/** What every command that changes a passage needs. */
export interface ChangeTools {
  readonly requests: ServerRequests;
  readonly pages: ReportPages;
  readonly previews: Previews;
  /** What the user chose last. */
  readonly memory: vscode.Memento;
}

export interface ChangeCommand<Given> {
  readonly command: string;
  /** Stands over every question of the command. */
  readonly title: string;
  /** Whether the caller said what to do, so that the passage is not asked for either. */
  readonly complete: (given: Given | undefined) => boolean;
  /** Asks for what the caller left out; undefined when the user leaves. */
  readonly request: (place: ChangePlace, given: Given | undefined) => Promise<RequestedChange | undefined>;
}

/** Where a change is to be made; without a range in the whole file. */
export interface ChangePlace {
  readonly document: vscode.TextDocument;
  readonly range: Range | undefined;
}

/**
 * Registers a command that changes a passage. Called with all it needs it asks nothing and makes the change at once:
 * the passage is then the range given, else what is selected, else the whole file. Else it asks, and shows the change
 * first, unless the user has turned that off.
 */
export function changeCommand<Given extends CommandTarget>(
  { command, title, complete, request }: ChangeCommand<Given>,
  { requests, pages, previews }: Omit<ChangeTools, 'memory'>,
): vscode.Disposable {
  return vscode.commands.registerCommand(command, async (given?: Given): Promise<ChangeOutcome> => {
    try {
      const target = await findTarget(given);
      if (target === undefined) return undefined;
      const { document } = target;
      const told = complete(given);
      const range = told ? rangeOf(target) : await pickPassage(requests, target, title);
      if (range === 'none') return refuse('There are no bars here yet: write a system of tab first.');
      if (range === undefined && !told) return undefined;
      const place = { document, range: range && plainRange(range) };
      const change = await request(place, given);
      if (change === undefined) return undefined;
      if (given?.preview ?? (!told && wantsPreview(document)))
        return await previews.open(document, place.range, change);
      return await applyChange(document, await change.ask(place.range, 1), change.done, pages);
    } catch (error) {
      return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
    }
  });
}

/** The range that the caller named, else what is selected; undefined for the whole file. */
export function rangeOf({
  range,
  selection,
}: {
  range: vscode.Range | undefined;
  selection: vscode.Range;
}): vscode.Range | undefined {
  return range ?? (selection.isEmpty ? undefined : selection);
}

function wantsPreview(document: vscode.TextDocument): boolean {
  return vscode.workspace.getConfiguration('pegbox', document).get('preview', true);
}
