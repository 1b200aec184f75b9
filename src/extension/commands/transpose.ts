import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import { askText } from '../askText';
import { changeCommand, type ChangePlace, type ChangeTools } from '../changeCommand';
import { firstBar } from '../firstBar';
import { halfStepText } from '../halfStepText';
import type { ServerRequests } from '../serverRequests';

export interface TransposeArguments extends CommandTarget {
  /** Half steps, or a key to go to. */
  readonly by?: number | string;
}

const TITLE = 'Transpose passage';

export function registerTranspose(tools: ChangeTools): Disposable {
  const { requests } = tools;
  return changeCommand<TransposeArguments>(
    {
      command: 'pegbox.transpose',
      title: TITLE,
      complete: (given) => given?.by !== undefined,
      request: async (place, given) => {
        const by = given?.by ?? (await askBy(requests, place));
        if (by === undefined) return undefined;
        const uri = place.document.uri.toString();
        const way = byText(by);
        return {
          asked: `Transpose ${way}`,
          done: `Transposed ${way}`,
          after: typeof by === 'string' ? `in ${by}` : way,
          ask: (range) => requests.ask(REQUESTS.transpose, { uri, range, by }),
        };
      },
    },
    tools,
  );
}

/** One bar is tried while one types, so that a key which cannot be read is told at once. */
async function askBy(
  requests: ServerRequests,
  { document, range }: ChangePlace,
): Promise<number | string | undefined> {
  const uri = document.uri.toString();
  const value = await askText({
    title: TITLE,
    prompt: 'Half steps up (5) or down (-2), or a key to go to (E minor)',
    check: async (text) => {
      const bar = firstBar(range);
      const answer = await requests.ask(REQUESTS.transpose, { uri, range: bar, by: readBy(text) });
      return 'error' in answer ? answer.error : undefined;
    },
  });
  return value === undefined ? undefined : readBy(value);
}

/**
 * A signed whole number is half steps, anything else a key.
 *
 * @example readBy('−2') // -2
 */
export function readBy(text: string): number | string {
  const plain = text.trim().replace(/^[−–]/, '-');
  return /^[+-]?\d+$/.test(plain) ? Number(plain) : plain;
}

function byText(by: number | string): string {
  return typeof by === 'string' ? `to ${by}` : halfStepText(by);
}
