import type { Disposable } from 'vscode';
import { REQUESTS } from '../../server/requests';
import { askText } from '../askText';
import { changeCommand, type ChangePlace, type ChangeTools } from '../changeCommand';
import { conversion } from '../conversion';
import { firstBar } from '../firstBar';
import type { ServerRequests } from '../serverRequests';
import { askConversion, goesSomewhere, type ConvertArguments } from './convert';

const TITLE = 'Convert passage into a new part';

/** The original stays; what it becomes stands under it as a part of its own. */
export function registerConvertIntoNewPart(tools: ChangeTools): Disposable {
  return changeCommand<ConvertArguments>(
    {
      command: 'pegbox.convertIntoNewPart',
      title: TITLE,
      complete: (given) => given?.newPart !== undefined && goesSomewhere(given),
      request: async (place, given) => {
        const newPart = given?.newPart ?? (await askName(tools.requests, place));
        if (newPart === undefined) return undefined;
        const request = await askConversion(tools, place, { ...given, newPart }, TITLE);
        return request && conversion(tools.requests, place.document, request);
      },
    },
    tools,
  );
}

/** One bar is tried while one types, so that a name which is taken is told at once. */
function askName(requests: ServerRequests, { document, range }: ChangePlace): Promise<string | undefined> {
  const uri = document.uri.toString();
  return askText({
    title: TITLE,
    prompt: 'A name for the new part',
    placeholder: 'Second guitar',
    check: async (newPart) => {
      const answer = await requests.ask(REQUESTS.convert, { uri, range: firstBar(range), newPart });
      return 'error' in answer ? answer.error : undefined;
    },
  });
}
