import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import { changeCommand, type ChangeTools } from '../changeCommand';
import { pick } from '../pick';

/** For keybindings and other extensions; `replace` says that nothing is to be asked. */
export interface WriteChordsArguments extends CommandTarget {
  /** Whether names that disagree with what sounds are replaced. */
  readonly replace?: boolean;
}

const TITLE = 'Write chords row';

const CHOICES = [
  { label: 'Add what is missing', detail: 'Every name that you wrote stays.', replace: false },
  {
    label: 'Add what is missing, and correct',
    detail: 'Names that disagree with what sounds are replaced; the others stay.',
    replace: true,
  },
];

/** Writes the names of what sounds into the row of chords. */
export function registerWriteChords(tools: ChangeTools): Disposable {
  const { requests } = tools;
  return changeCommand<WriteChordsArguments>(
    {
      command: 'pegbox.writeChords',
      title: TITLE,
      complete: (given) => given?.replace !== undefined,
      request: async ({ document }, given) => {
        const replace =
          given?.replace ?? (await pick(CHOICES, { title: TITLE, placeholder: 'What is written?' }))?.replace;
        if (replace === undefined) return undefined;
        const uri = document.uri.toString();
        const how = replace ? ', and correct those that disagree' : '';
        return {
          asked: `Write names of chords${how}`,
          done: `Names of chords written${how === '' ? '' : ' and corrected'}`,
          after: 'with names of chords',
          ask: (range) => requests.ask(REQUESTS.writeChords, { uri, range, replace }),
        };
      },
    },
    tools,
  );
}
