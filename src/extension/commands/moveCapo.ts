import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import { askText } from '../askText';
import { changeCommand, type ChangePlace, type ChangeTools } from '../changeCommand';
import { firstBar } from '../firstBar';
import { pickKeepUnderCapo } from '../pickKeep';
import type { ServerRequests } from '../serverRequests';

export interface MoveCapoArguments extends CommandTarget {
  /** A value of the field `capo`. */
  readonly capo?: string;
  readonly keep?: 'sound' | 'shapes';
}

const TITLE = 'Move capo';

export function registerMoveCapo(tools: ChangeTools): Disposable {
  const { requests } = tools;
  return changeCommand<MoveCapoArguments>(
    {
      command: 'pegbox.moveCapo',
      title: TITLE,
      complete: (given) => given?.capo !== undefined,
      request: async (place, given) => {
        const capo = given?.capo ?? (await askCapo(requests, place));
        if (capo === undefined) return undefined;
        const keep = given?.keep ?? (await pickKeepUnderCapo(TITLE));
        if (keep === undefined) return undefined;
        const uri = place.document.uri.toString();
        const off = capo.trim().toLowerCase() === 'none';
        return {
          asked: `${off ? 'Take the capo off' : `Move the capo to ${capo}`}, keeping the ${keep}`,
          done: `${off ? 'Capo taken off' : `Capo moved to ${capo}`}, keeping the ${keep}`,
          after: off ? 'without capo' : `with capo ${capo}`,
          ask: (range) => requests.ask(REQUESTS.moveCapo, { uri, range, capo, keep }),
        };
      },
    },
    tools,
  );
}

/** One bar is tried while one types, so that a capo which cannot be read is told at once. */
function askCapo(requests: ServerRequests, { document, range }: ChangePlace): Promise<string | undefined> {
  const uri = document.uri.toString();
  return askText({
    title: TITLE,
    prompt: 'A fret (3), none, or a fret on some strings (2 on 5 4 3)',
    check: async (capo) => {
      const bar = firstBar(range);
      const answer = await requests.ask(REQUESTS.moveCapo, { uri, range: bar, capo, keep: 'shapes' });
      return 'error' in answer ? answer.error : undefined;
    },
  });
}
