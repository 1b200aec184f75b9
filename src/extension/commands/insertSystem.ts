import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { LayoutRequest } from '../../service/start/startAnswer';
import { askLayout, layoutText } from '../askLayout';
import type { ChangeTools } from '../changeCommand';
import { apartFromTarget } from '../target';
import { writeCommand } from '../writeAt';

/** For keybindings and other extensions; what tells bars, columns or rows is not asked. */
export interface InsertSystemArguments extends CommandTarget, LayoutRequest {}

const TITLE = 'Insert system';

/** Lays down an empty system for the tuning in force at the cursor. */
export function registerInsertSystem(tools: ChangeTools): Disposable {
  const { requests, memory } = tools;
  return writeCommand<InsertSystemArguments>(
    {
      command: 'pegbox.insertSystem',
      request: async ({ uri, position }, given) => {
        const said: LayoutRequest = apartFromTarget(given);
        const layout =
          Object.keys(said).length > 0
            ? said
            : await askLayout(memory, TITLE, async (attempt) => {
                const answer = await requests.ask(REQUESTS.insertSystem, { uri, position, ...attempt });
                return 'error' in answer ? answer.error : undefined;
              });
        if (layout === undefined) return undefined;
        const words = layoutText(layout);
        return {
          asked: `Insert a system: ${words}`,
          done: `System inserted: ${words}`,
          after: 'with a new system',
          ask: (at) => requests.ask(REQUESTS.insertSystem, { uri, position: at, ...layout }),
        };
      },
    },
    tools,
  );
}
