import type { Disposable } from 'vscode';
import type { CommandTarget } from '../../server/requests';
import { askKey } from '../askKey';
import { changeCommand, type ChangePlace, type ChangeTools } from '../changeCommand';
import { conversion, type Conversion } from '../conversion';
import { pickKeep } from '../pickKeep';
import { pickObjective } from '../pickObjective';
import { pickStrings } from '../pickStrings';
import { apartFromTarget } from '../target';

/** For keybindings and other extensions; what is left out is asked for. */
export interface ConvertArguments extends CommandTarget, Conversion {}

const TITLE = 'Convert passage to another tuning';

export function registerConvert(tools: ChangeTools): Disposable {
  return changeCommand<ConvertArguments>(
    {
      command: 'pegbox.convert',
      title: TITLE,
      complete: goesSomewhere,
      request: async (place, given) => {
        const request = await askConversion(tools, place, given, TITLE);
        return request && conversion(tools.requests, place.document, request);
      },
    },
    tools,
  );
}

/** Whether the caller said where to go, so that only what cannot be guessed is asked for. */
export function goesSomewhere(given: ConvertArguments | undefined): boolean {
  return given?.tuning !== undefined || given?.instrument !== undefined;
}

/** Asks for the strings, what stays, the key that this needs, and what is to be easiest. */
export async function askConversion(
  { requests, memory }: ChangeTools,
  place: ChangePlace,
  given: ConvertArguments | undefined,
  title: string,
): Promise<Conversion | undefined> {
  const said: Conversion = apartFromTarget(given);
  const at = place.range?.start ?? { line: 0, character: 0 };
  const told = goesSomewhere(given);
  const strings = told ? {} : await pickStrings(requests, place.document, at, title);
  if (strings === undefined) return undefined;
  const keep = said.keep ?? (await pickKeep(title));
  if (keep === undefined) return undefined;
  const request: Conversion = { ...said, ...strings, keep };
  const key = said.key ?? (keep === 'function' ? await askKey(requests, place, request, title) : '');
  if (key === undefined) return undefined;
  // Shapes stay where they are: there is nothing to choose.
  const chosen = said.objective ?? (told || keep === 'shapes' ? 'total' : await pickObjective(title, memory));
  if (chosen === undefined) return undefined;
  return { ...request, ...(key !== '' && { key }), ...(chosen !== 'total' && { objective: chosen }) };
}
