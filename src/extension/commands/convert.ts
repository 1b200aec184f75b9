import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import { changeCommand, type ChangeTools } from '../changeCommand';
import { pickKeep, type Keep } from '../pickKeep';
import { pickTuning } from '../pickTuning';

/** For keybindings and other extensions; what is left out is asked for. */
export interface ConvertArguments extends CommandTarget {
  readonly tuning?: string;
  readonly keep?: Keep;
}

const TITLE = 'Convert passage to another tuning';

export function registerConvert(tools: ChangeTools): Disposable {
  const { requests } = tools;
  return changeCommand<ConvertArguments>(
    {
      command: 'pegbox.convert',
      title: TITLE,
      complete: (given) => given?.tuning !== undefined,
      request: async ({ document, range }, given) => {
        const at = range?.start ?? { line: 0, character: 0 };
        const tuning = given?.tuning ?? (await pickTuning(requests, document, at, TITLE));
        if (tuning === undefined) return undefined;
        const keep = given?.keep ?? (await pickKeep(TITLE, 'The frets stay; the notes change.'));
        if (keep === undefined) return undefined;
        const uri = document.uri.toString();
        return {
          asked: `Convert to ${tuning}, keeping the ${keep}`,
          done: `Converted to ${tuning}, keeping the ${keep}`,
          after: `in ${tuning}`,
          ask: (some) => requests.ask(REQUESTS.convert, { uri, range: some, tuning, keep }),
        };
      },
    },
    tools,
  );
}
