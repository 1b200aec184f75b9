import { REQUESTS } from '../server/requests';
import { refuse } from './applyChange';
import { askText } from './askText';
import type { ChangePlace } from './changeCommand';
import type { Conversion } from './conversion';
import { firstBar } from './firstBar';
import type { ServerRequests } from './serverRequests';

/**
 * Asks for the key under which a conversion keeps the function, when the server says that it lacks one. One bar is
 * tried while one types. Undefined when the user leaves, or when another thing than the key is wrong, which is told.
 */
export async function askKey(
  requests: ServerRequests,
  { document, range }: ChangePlace,
  request: Conversion,
  title: string,
): Promise<string | undefined> {
  const uri = document.uri.toString();
  const tried = { ...request, uri, range: firstBar(range) };
  const lacking = await requests.ask(REQUESTS.convert, tried);
  if ('error' in lacking && lacking.asks !== 'key') {
    refuse(lacking.error);
    return undefined;
  }
  return askText({
    title,
    prompt: 'The key to go to, such as G or E minor',
    check: async (key) => {
      const answer = await requests.ask(REQUESTS.convert, { ...tried, key });
      return 'error' in answer ? answer.error : undefined;
    },
  });
}
