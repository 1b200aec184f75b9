import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { ServiceError } from '../../service/serviceApi';
import type { RingingAnswer } from '../../service/ringing/ringingAnswer';
import { refuse } from '../applyChange';
import type { HelpPages } from '../helpPages';
import { fileName } from '../fileName';
import { plainPosition, plainRange } from '../ranges';
import { ringingPage } from '../ringingPage';
import type { ServerRequests } from '../serverRequests';
import { findTarget } from '../target';

/** The path of the page among the help pages. */
const PAGE = '/Which strings may ring.md';

/**
 * Shows which open strings may ring over the key and each chord: of the bars that are selected, else of the part at the
 * cursor. Gives back the answer.
 */
export function registerRingingStrings(requests: ServerRequests, pages: HelpPages): vscode.Disposable {
  return vscode.commands.registerCommand(
    'pegbox.ringingStrings',
    async (given?: CommandTarget): Promise<RingingAnswer | ServiceError | undefined> => {
      try {
        const target = await findTarget(given);
        if (target === undefined) return undefined;
        const { document, range, selection } = target;
        const bars = range ?? (selection.isEmpty ? undefined : selection);
        const answer = await requests.ask(REQUESTS.ringing, {
          uri: document.uri.toString(),
          ...(bars ? { range: plainRange(bars) } : { position: plainPosition(selection.start) }),
        });
        if ('error' in answer) return refuse(answer.error);
        const [first] = answer.remarks;
        if (answer.keys.length === 0 && answer.chords.length === 0) return refuse(first ?? '');
        pages.put(PAGE, ringingPage(fileName(document.uri), answer));
        await pages.show(PAGE);
        return answer;
      } catch (error) {
        return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    },
  );
}
