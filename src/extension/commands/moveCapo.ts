import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import { applyChange, type ChangeOutcome } from '../applyChange';
import { changeCommand, type ChangePlace } from '../changeCommand';
import { pickKeep, type Keep } from '../pickKeep';
import type { ReportPages } from '../reportPages';
import type { ServerRequests } from '../serverRequests';

export interface MoveCapoArguments extends CommandTarget {
  /** A value of the field `capo`. */
  readonly capo?: string;
  readonly keep?: Keep;
}

const TITLE = 'Move capo';

export function registerMoveCapo(requests: ServerRequests, pages: ReportPages): vscode.Disposable {
  return changeCommand<MoveCapoArguments>(
    { command: 'pegbox.moveCapo', title: TITLE, complete: (given) => given?.capo !== undefined },
    requests,
    async (place, given): Promise<ChangeOutcome> => {
      const capo = given?.capo ?? (await askCapo(requests, place));
      if (capo === undefined) return undefined;
      const shapes = 'The frets stay; key, chord names and sound move.';
      const keep = given?.keep ?? (await pickKeep(TITLE, shapes));
      if (keep === undefined) return undefined;
      const { document, range } = place;
      const answer = await requests.ask(REQUESTS.moveCapo, {
        uri: document.uri.toString(),
        range,
        capo,
        keep,
      });
      const moved = capo.trim().toLowerCase() === 'none' ? 'Capo taken off' : `Capo moved to ${capo}`;
      return applyChange(document, answer, `${moved}, keeping the ${keep}`, pages);
    },
  );
}

async function askCapo(requests: ServerRequests, place: ChangePlace): Promise<string | undefined> {
  return vscode.window.showInputBox({
    title: TITLE,
    prompt: 'A fret (3), none, or a fret on some strings (2 on 5 4 3)',
    validateInput: async (text) => {
      if (text.trim() === '') return 'Type a fret, or none.';
      const { document, range } = place;
      const uri = document.uri.toString();
      const answer = await requests.ask(REQUESTS.moveCapo, { uri, range, capo: text, keep: 'shapes' });
      return 'error' in answer ? answer.error : undefined;
    },
  });
}
