import * as vscode from 'vscode';
import { REQUESTS } from '../../server/requests';
import type { NewTabRequest } from '../../service/start/startAnswer';
import type { ServiceError } from '../../service/serviceApi';
import { refuse } from '../applyChange';
import { askLayout } from '../askLayout';
import { askText } from '../askText';
import type { ChangeTools } from '../changeCommand';
import { pick } from '../pick';
import type { ServerRequests } from '../serverRequests';

const TITLE = 'New tab';
const REMEMBERED = 'pegbox.newTab.instrument';

/** The address of the new tab; undefined when the user left. */
export type NewTabOutcome = { readonly uri: string } | ServiceError | undefined;

/** A new tab for an instrument in a tuning, with an empty system and the cursor in its first cell. */
export function registerNewTab({ requests, memory }: ChangeTools): vscode.Disposable {
  return vscode.commands.registerCommand('pegbox.newTab', async (given?: unknown): Promise<NewTabOutcome> => {
    try {
      const request = toldIn(given) ?? (await askNewTab(requests, memory));
      if (request === undefined) return undefined;
      const answer = await requests.ask(REQUESTS.newTab, request);
      if ('error' in answer) return refuse(answer.error);
      const document = await vscode.workspace.openTextDocument({ language: 'pegbox', content: answer.text });
      const cursor = new vscode.Position(answer.cursor.line, answer.cursor.character);
      await vscode.window.showTextDocument(document, {
        preview: false,
        selection: new vscode.Range(cursor, cursor),
      });
      return { uri: document.uri.toString() };
    } catch (error) {
      return refuse(
        `Pegbox could not begin a tab: ${error instanceof Error ? error.message : String(error)}`,
      );
    }
  });
}

/** What a caller said. The editor's own menus send arguments of theirs, which say nothing of a tab. */
function toldIn(given: unknown): NewTabRequest | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  return 'instrument' in given || 'tuning' in given ? (given as NewTabRequest) : undefined;
}

async function askNewTab(
  requests: ServerRequests,
  memory: vscode.Memento,
): Promise<NewTabRequest | undefined> {
  const instruments = (await requests.ask(REQUESTS.instruments, {})).map(({ name, notes }) => ({
    label: name,
    description: notes,
  }));
  const last = memory.get<string>(REMEMBERED);
  const instrument = await pick(instruments, {
    title: TITLE,
    placeholder: 'Which instrument?',
    active: instruments.find(({ label }) => label === last),
  });
  if (instrument === undefined) return undefined;
  const tuning = await pickStartingTuning(requests, instrument.label);
  if (tuning === undefined) return undefined;
  const piece = { instrument: instrument.label, tuning };
  const layout = await askLayout(memory, TITLE, (attempt) => refusal(requests, { ...piece, ...attempt }));
  if (layout === undefined) return undefined;
  await memory.update(REMEMBERED, instrument.label);
  return { ...piece, ...layout };
}

async function pickStartingTuning(requests: ServerRequests, instrument: string): Promise<string | undefined> {
  const tunings = await requests.ask(REQUESTS.startingTunings, { instrument });
  if ('error' in tunings) {
    refuse(tunings.error);
    return undefined;
  }
  const items = tunings.map(({ value, notes, steps, chord, remark }) => ({
    label: value,
    description: notes,
    detail: [...(chord === '' ? [] : [`open strings: ${chord}`]), steps, remark]
      .filter((said) => said !== '')
      .join(' · '),
    choose: (): Promise<string | undefined> => Promise.resolve(value),
  }));
  const own = {
    label: '$(edit) Type a tuning…',
    alwaysShow: true,
    choose: () => typeTuning(requests, instrument),
  };
  const picked = await pick<vscode.QuickPickItem & { choose: () => Promise<string | undefined> }>(
    [own, ...items],
    { title: TITLE, placeholder: `Which tuning of the ${instrument}?`, active: items[0] },
  );
  return picked?.choose();
}

function typeTuning(requests: ServerRequests, instrument: string): Promise<string | undefined> {
  return askText({
    title: TITLE,
    prompt: 'A name, notes from low to high, or steps from a name',
    placeholder: 'D A D G A D',
    check: (tuning) => refusal(requests, { instrument, tuning }),
  });
}

async function refusal(requests: ServerRequests, request: NewTabRequest): Promise<string | undefined> {
  const answer = await requests.ask(REQUESTS.newTab, request);
  return 'error' in answer ? answer.error : undefined;
}
