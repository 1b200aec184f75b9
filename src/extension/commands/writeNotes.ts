import * as vscode from 'vscode';
import { REQUESTS, type ChangeAnswer, type CommandTarget } from '../../server/requests';
import type { WriteNotesRequest } from '../../service/write/writeRequest';
import { askText } from '../askText';
import type { ChangeTools } from '../changeCommand';
import { pickNoteValue } from '../pickNoteValue';
import type { ServerRequests } from '../serverRequests';
import { writeCommand, type WritePlace } from '../writeAt';

export interface WriteNotesArguments extends CommandTarget, Partial<WriteNotesRequest> {}

const TITLE = 'Write notes by name';
const PROMPT =
  'D4, D or b3; D3+A3 together; - rings on; . is silence; D4:q lasts a quarter; | goes to the next bar. Names mean what sounds';

/** Notes typed by name become fingered tab at the cursor. */
export function registerWriteNotes(tools: ChangeTools): vscode.Disposable {
  const { requests, memory } = tools;
  return writeCommand<WriteNotesArguments>(
    {
      command: 'pegbox.writeNotes',
      request: async (place, given) => {
        const asked =
          given?.text === undefined ? await askNotes(requests, memory, place, given) : told(given);
        if (asked === undefined) return undefined;
        return {
          asked: `Write ${asked.text.trim()}`,
          done: 'Notes written',
          after: 'with the notes',
          ask: (position) => requests.ask(REQUESTS.writeNotes, { uri: place.uri, position, ...asked }),
        };
      },
    },
    tools,
  );
}

function told({ text = '', value, key, inTheWay }: WriteNotesArguments): WriteNotesRequest {
  return {
    text,
    ...(value !== undefined && { value }),
    ...(key !== undefined && { key }),
    ...(inTheWay !== undefined && { inTheWay }),
  };
}

/** Asks for the length, for the notes, and, for degrees where no key is in force, for the key. */
async function askNotes(
  requests: ServerRequests,
  memory: vscode.Memento,
  { uri, position }: WritePlace,
  given: WriteNotesArguments | undefined,
): Promise<WriteNotesRequest | undefined> {
  const value =
    given?.value ??
    (await pickNoteValue(memory, TITLE, 'How long is each note? One may have another length, such as D4:q'));
  if (value === undefined) return undefined;
  const attempt = async (request: WriteNotesRequest): Promise<ChangeAnswer> =>
    requests.ask(REQUESTS.writeNotes, { uri, position, ...request });
  let asked: WriteNotesRequest = { ...told({ ...given, value }), text: '' };
  const text = await askText({
    title: TITLE,
    prompt: PROMPT,
    placeholder: 'D4 E4 F#4',
    check: async (typed) =>
      saying(await attempt({ ...asked, text: typed }), attempt, { ...asked, text: typed }),
  });
  if (text === undefined) return undefined;
  asked = { ...asked, text };
  const answer = await attempt(asked);
  if ('error' in answer && answer.asks === 'key') {
    const key = await askKey(attempt, asked);
    if (key === undefined) return undefined;
    asked = { ...asked, key };
  }
  const again = 'error' in answer ? await attempt(asked) : answer;
  return 'error' in again && again.asks === 'new bars' ? { ...asked, inTheWay: 'new bars' } : asked;
}

type Said = string | vscode.InputBoxValidationMessage;

/** What is told of a text while one types: what was read; what will be asked or done; or what is wrong. */
async function saying(
  answer: ChangeAnswer,
  attempt: (request: WriteNotesRequest) => Promise<ChangeAnswer>,
  request: WriteNotesRequest,
): Promise<Said> {
  const { Info, Warning } = vscode.InputBoxValidationSeverity;
  if (!('error' in answer)) {
    const { unplaced, remarks } = answer.report;
    if (unplaced.length === 0) return { message: remarks.join(' '), severity: Info };
    const lost = unplaced.map(({ name, reason }) => `${name} has no place: ${reason}.`);
    return { message: lost.join(' '), severity: Warning };
  }
  if (answer.asks === 'key')
    return { message: 'Degrees are counted in a key; it is asked for next.', severity: Info };
  if (answer.asks !== 'new bars') return answer.error;
  const inNewBars = await attempt({ ...request, inTheWay: 'new bars' });
  if ('error' in inNewBars) return inNewBars.error;
  const [where = ''] = inNewBars.report.remarks;
  return { message: `Notes stand in the way here; Enter puts in new bars. ${where}`, severity: Warning };
}

function askKey(
  attempt: (request: WriteNotesRequest) => Promise<ChangeAnswer>,
  request: WriteNotesRequest,
): Promise<string | undefined> {
  return askText({
    title: TITLE,
    prompt: 'The key that the degrees are counted in, such as D or E minor',
    check: async (key) => saying(await attempt({ ...request, key }), attempt, { ...request, key }),
  });
}
