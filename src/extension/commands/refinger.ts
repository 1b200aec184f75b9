import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { RefingerRequest } from '../../service/serviceApi';
import { askText } from '../askText';
import { changeCommand, type ChangePlace, type ChangeTools } from '../changeCommand';
import { firstBar } from '../firstBar';
import { pick } from '../pick';
import type { ServerRequests } from '../serverRequests';

type Objective = RefingerRequest['objective'];

export interface RefingerArguments extends CommandTarget {
  readonly objective?: Objective;
  /** String numbers, for the objective `strings`. */
  readonly strings?: readonly number[];
}

const TITLE = 'Refinger passage';

const ITEMS: readonly { readonly label: string; readonly detail: string; readonly objective: Objective }[] = [
  { label: 'Lower on the neck', detail: 'The sum of the frets as small as can be.', objective: 'lower' },
  { label: 'More open strings', detail: 'As many notes on open strings as can be.', objective: 'open' },
  {
    label: 'On given strings…',
    detail: 'As many notes as can be on strings that you name.',
    objective: 'strings',
  },
  {
    label: 'Easier hardest move',
    detail: 'The hardest moment of each section as easy as can be.',
    objective: 'hardest',
  },
  {
    label: 'Closed',
    detail: 'No open strings, so that it can be moved along the neck.',
    objective: 'closed',
  },
];

/** The same notes in the same tuning, fingered otherwise; never worse in what is asked for. */
export function registerRefinger(tools: ChangeTools): Disposable {
  const { requests } = tools;
  return changeCommand<RefingerArguments>(
    {
      command: 'pegbox.refinger',
      title: TITLE,
      complete: (given) =>
        given?.objective !== undefined && (given.objective !== 'strings' || given.strings !== undefined),
      request: async (place, given) => {
        const placeholder = 'What should become better?';
        const objective = given?.objective ?? (await pick(ITEMS, { title: TITLE, placeholder }))?.objective;
        if (objective === undefined) return undefined;
        const strings =
          objective === 'strings' ? (given?.strings ?? (await askStrings(requests, place))) : undefined;
        if (objective === 'strings' && strings === undefined) return undefined;
        const uri = place.document.uri.toString();
        const way = wayText(objective, strings ?? []);
        return {
          asked: `Refinger: ${way}`,
          done: `Refingered: ${way}`,
          after: way,
          ask: (range, alternatives) =>
            requests.ask(REQUESTS.refinger, {
              uri,
              range,
              objective,
              alternatives,
              ...(strings && { strings }),
            }),
        };
      },
    },
    tools,
  );
}

function wayText(objective: Objective, strings: readonly number[]): string {
  switch (objective) {
    case 'lower':
      return 'lower on the neck';
    case 'open':
      return 'more open strings';
    case 'strings':
      return `on ${strings.length === 1 ? 'string' : 'strings'} ${strings.join(' ')}`;
    case 'hardest':
      return 'the hardest move easier';
    case 'closed':
      return 'without open strings';
  }
}

async function askStrings(
  requests: ServerRequests,
  { document, range }: ChangePlace,
): Promise<readonly number[] | undefined> {
  const uri = document.uri.toString();
  const text = await askText({
    title: TITLE,
    prompt: 'Numbers of strings, the highest string is 1',
    placeholder: '4 3 2',
    check: async (typed) => {
      const strings = readStrings(typed);
      if (strings === undefined) return 'Type numbers of strings with spaces between them, such as 4 3 2.';
      const bar = firstBar(range);
      const answer = await requests.ask(REQUESTS.refinger, {
        uri,
        range: bar,
        objective: 'strings',
        strings,
      });
      return 'error' in answer ? answer.error : undefined;
    },
  });
  return text === undefined ? undefined : readStrings(text);
}

/**
 * Numbers of strings as they are typed; undefined for anything else.
 *
 * @example readStrings('4, 3 2') // [4, 3, 2]
 */
export function readStrings(text: string): readonly number[] | undefined {
  const pieces = text.split(/[\s,]+/).filter((piece) => piece !== '');
  return pieces.length > 0 && pieces.every((piece) => /^\d+$/.test(piece)) ? pieces.map(Number) : undefined;
}
