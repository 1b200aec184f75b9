import * as vscode from 'vscode';
import type { Range } from 'vscode-languageclient';
import type { CommandTarget } from '../server/requests';
import { refuse, type ChangeOutcome } from './applyChange';
import { pickPassage } from './pickPassage';
import { plainRange } from './ranges';
import type { ServerRequests } from './serverRequests';
import { findTarget } from './target';

export interface ChangeCommand<Given> {
  readonly command: string;
  /** Stands over every question of the command. */
  readonly title: string;
  /** Whether the caller said what to do, so that the passage is not asked for either. */
  readonly complete: (given: Given | undefined) => boolean;
}

/** Where a change is to be made; without a range in the whole file. */
export interface ChangePlace {
  readonly document: vscode.TextDocument;
  readonly range: Range | undefined;
}

/**
 * Registers a command that changes a passage. Called with all it needs it asks nothing: the passage is then the range
 * given, else what is selected, else the whole file.
 */
export function changeCommand<Given extends CommandTarget>(
  { command, title, complete }: ChangeCommand<Given>,
  requests: ServerRequests,
  run: (place: ChangePlace, given: Given | undefined) => Promise<ChangeOutcome>,
): vscode.Disposable {
  return vscode.commands.registerCommand(command, async (given?: Given): Promise<ChangeOutcome> => {
    try {
      const target = await findTarget(given);
      if (target === undefined) return undefined;
      const { document } = target;
      if (complete(given)) {
        const selected = target.selection.isEmpty ? undefined : target.selection;
        const range = target.range ?? selected;
        return await run({ document, range: range && plainRange(range) }, given);
      }
      const range = await pickPassage(requests, target, title);
      if (range === 'none') return refuse('There are no bars here yet: write a system of tab first.');
      return range && (await run({ document, range: plainRange(range) }, given));
    } catch (error) {
      return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
    }
  });
}
