import * as vscode from 'vscode';
import type { Position } from 'vscode-languageclient';
import { INSTRUMENTS } from '../instrument/instruments';
import { REQUESTS, type PlaceParams } from '../server/requests';
import type { TuningAnswer } from '../service/serviceApi';
import { askText } from './askText';
import { pick } from './pick';
import type { ServerRequests } from './serverRequests';

/** The strings that a passage is to go to: another tuning of its instrument, or another instrument in its usual tuning. */
export type Strings = { readonly tuning: string } | { readonly instrument: string };

/** What the service says of the tuning in force, which is nothing to go to. */
const AS_IT_IS = 'as it is';

interface Item extends vscode.QuickPickItem {
  readonly choose: () => Promise<Strings | undefined>;
}

/** Asks for a tuning: one of those on offer, the nearest first, or one that the user types; or for an instrument. */
export async function pickStrings(
  requests: ServerRequests,
  document: vscode.TextDocument,
  at: Position,
  title: string,
): Promise<Strings | undefined> {
  const place: PlaceParams = { uri: document.uri.toString(), position: at };
  const choices = await requests.ask(REQUESTS.tuningChoices, place);
  const others: Item[] = [
    { label: '$(edit) Type a tuning…', alwaysShow: true, choose: () => typeTuning(requests, place, title) },
    { label: '$(list-unordered) Another instrument…', alwaysShow: true, choose: () => pickInstrument(title) },
  ];
  const items = choices.map(({ value, notes, steps }): Item => ({
    label: value,
    description: notes,
    detail: steps,
    choose: () => Promise.resolve({ tuning: value }),
  }));
  const heading = {
    label: 'other instruments, in their usual tuning',
    kind: vscode.QuickPickItemKind.Separator,
  };
  const nothing = (): Promise<undefined> => Promise.resolve(undefined);
  const picked = await pick<Item>(
    [...others, ...items, { ...heading, choose: nothing }, ...instrumentItems()],
    {
      title,
      placeholder: 'Which tuning, or which instrument? The nearest come first.',
      active: items.find(({ detail }) => detail !== AS_IT_IS) ?? items[0],
    },
  );
  return picked?.choose();
}

/** Asks for a tuning alone: one of those on offer, the nearest first, or one that the user types. */
export async function pickTuning(
  requests: ServerRequests,
  document: vscode.TextDocument,
  at: Position,
  title: string,
): Promise<string | undefined> {
  const place: PlaceParams = { uri: document.uri.toString(), position: at };
  const choices = await requests.ask(REQUESTS.tuningChoices, place);
  const items = choices.map(({ value, notes, steps }): Item => ({
    label: value,
    description: notes,
    detail: steps,
    choose: () => Promise.resolve({ tuning: value }),
  }));
  const picked = await pick<Item>(
    [
      { label: '$(edit) Type a tuning…', alwaysShow: true, choose: () => typeTuning(requests, place, title) },
      ...items,
    ],
    {
      title,
      placeholder: 'Which tuning? The nearest come first.',
      active: items.find(({ detail }) => detail !== AS_IT_IS) ?? items[0],
    },
  );
  const chosen = await picked?.choose();
  return chosen && 'tuning' in chosen ? chosen.tuning : undefined;
}

async function pickInstrument(title: string): Promise<Strings | undefined> {
  const placeholder = 'Which instrument? It comes with its usual tuning.';
  return (await pick(instrumentItems(), { title, placeholder }))?.choose();
}

function instrumentItems(): Item[] {
  return INSTRUMENTS.map(({ name, usualTuning }) => ({
    label: name,
    description: usualTuning,
    choose: () => Promise.resolve({ instrument: name }),
  }));
}

/** A box for a tuning's value that says while one types what the value is read as, or what is wrong with it. */
async function typeTuning(
  requests: ServerRequests,
  place: PlaceParams,
  title: string,
): Promise<Strings | undefined> {
  const tuning = await askText({
    title,
    prompt: 'A name, notes from low to high, or steps from a name',
    placeholder: 'D A D G A D',
    check: async (value) => {
      const answer = await requests.ask(REQUESTS.readTuning, { ...place, value });
      if ('error' in answer) return answer.error;
      return { message: tuningText(answer), severity: vscode.InputBoxValidationSeverity.Info };
    },
  });
  return tuning === undefined ? undefined : { tuning };
}

function tuningText({ strings, chord }: TuningAnswer): string {
  const notes = strings.map(({ note }) => note).join(' ');
  return chord === '' ? notes : `${notes}, open strings: ${chord}`;
}
