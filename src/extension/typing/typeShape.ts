import type * as vscode from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import { askText } from '../askText';
import type { ChangeTools } from '../changeCommand';
import { readFrets } from '../views/fretsText';
import { writeCommand } from '../writeAt';

export interface TypeShapeArguments extends CommandTarget {
  /** `x02210`: a fret for each string, the lowest-placed string first. Left out, it is asked for. */
  readonly shape?: string;
}

const TITLE = 'Type a Chord Shape';
const WRONG =
  'Write a fret for each string, lowest string first, and x for one that is not played: x02210, or x 0 2 12 10 0.';

/** Registers the command that writes a chord's shape, typed as people write it, in the column of the cursor. */
export function registerTypeShape(tools: ChangeTools): vscode.Disposable {
  return writeCommand<TypeShapeArguments>(
    {
      command: 'pegbox.typeShape',
      request: async ({ uri }, given) => {
        const shape = given?.shape ?? (await ask());
        if (shape === undefined) return undefined;
        const frets = readFrets(shape);
        if (!frets) throw new Error(WRONG);
        return {
          asked: `The shape ${shape}`,
          done: `The shape ${shape} is written`,
          after: 'with the shape',
          ask: (position) => tools.requests.ask(REQUESTS.insertShape, { uri, position, frets }),
        };
      },
    },
    tools,
  );
}

function ask(): Promise<string | undefined> {
  return askText({
    title: TITLE,
    prompt: 'A fret for each string, lowest string first; x is not played. Enter writes it at the cursor.',
    placeholder: 'x02210',
    check: (text) => Promise.resolve(readFrets(text) ? undefined : WRONG),
  });
}
