import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import { applyChange, type ChangeOutcome } from '../applyChange';
import { changeCommand } from '../changeCommand';
import { pickKeep, type Keep } from '../pickKeep';
import { pickTuning } from '../pickTuning';
import type { ReportPages } from '../reportPages';
import type { ServerRequests } from '../serverRequests';

/** For keybindings and other extensions; what is left out is asked for. */
export interface ConvertArguments extends CommandTarget {
  readonly tuning?: string;
  readonly keep?: Keep;
}

const TITLE = 'Convert passage to another tuning';

export function registerConvert(requests: ServerRequests, pages: ReportPages): Disposable {
  return changeCommand<ConvertArguments>(
    { command: 'pegbox.convert', title: TITLE, complete: (given) => given?.tuning !== undefined },
    requests,
    async ({ document, range }, given): Promise<ChangeOutcome> => {
      const at = range?.start ?? { line: 0, character: 0 };
      const tuning = given?.tuning ?? (await pickTuning(requests, document, at, TITLE));
      if (tuning === undefined) return undefined;
      const keep = given?.keep ?? (await pickKeep(TITLE, 'The frets stay; the notes change.'));
      if (keep === undefined) return undefined;
      const uri = document.uri.toString();
      const answer = await requests.ask(REQUESTS.convert, { uri, range, tuning, keep });
      const asked = `Converted to ${tuning}, keeping the ${keep}`;
      return applyChange(document, answer, asked, pages);
    },
  );
}
