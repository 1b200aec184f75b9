import * as vscode from 'vscode';
import type { Position } from 'vscode-languageclient';
import { REQUESTS, type PlaceParams } from '../server/requests';
import type { TuningAnswer } from '../service/serviceApi';
import { askText } from './askText';
import { pick } from './pick';
import type { ServerRequests } from './serverRequests';

/** What the service says of the tuning in force, which is nothing to go to. */
const AS_IT_IS = 'as it is';

/** Asks for a tuning: one of those on offer, the nearest first, or one that the user types. */
export async function pickTuning(
  requests: ServerRequests,
  document: vscode.TextDocument,
  at: Position,
  title: string,
): Promise<string | undefined> {
  const place: PlaceParams = { uri: document.uri.toString(), position: at };
  const choices = await requests.ask(REQUESTS.tuningChoices, place);
  const typed = { label: '$(edit) Type a tuning…', alwaysShow: true, value: undefined };
  const items = choices.map(({ value, notes, steps }) => ({
    label: value,
    description: notes,
    detail: steps,
    value,
  }));
  const picked = await pick<vscode.QuickPickItem & { value: string | undefined }>([typed, ...items], {
    title,
    placeholder: 'Which tuning? The nearest come first.',
    active: items.find(({ detail }) => detail !== AS_IT_IS) ?? items[0],
  });
  if (picked === undefined) return undefined;
  return picked.value ?? typeTuning(requests, place, title);
}

/** A box for a tuning's value that says while one types what the value is read as, or what is wrong with it. */
function typeTuning(
  requests: ServerRequests,
  place: PlaceParams,
  title: string,
): Promise<string | undefined> {
  return askText({
    title,
    prompt: 'A name, notes from low to high, or steps from a name',
    placeholder: 'D A D G A D',
    check: async (value) => {
      const answer = await requests.ask(REQUESTS.readTuning, { ...place, value });
      if ('error' in answer) return answer.error;
      return { message: tuningText(answer), severity: vscode.InputBoxValidationSeverity.Info };
    },
  });
}

function tuningText({ strings, chord }: TuningAnswer): string {
  const notes = strings.map(({ note }) => note).join(' ');
  return chord === '' ? notes : `${notes}, open strings: ${chord}`;
}
