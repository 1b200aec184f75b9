import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { WriteExerciseRequest } from '../../service/write/writeRequest';
import { askExercise } from '../askExercise';
import type { ChangeTools } from '../changeCommand';
import { exerciseText } from '../exerciseText';
import { apartFromTarget } from '../target';
import { writeCommand } from '../writeAt';

export interface InsertExerciseArguments extends CommandTarget, WriteExerciseRequest {}

/** A scale or an arpeggio is laid down near the cursor, fingered. */
export function registerInsertExercise(tools: ChangeTools): Disposable {
  const { requests, memory } = tools;
  return writeCommand<InsertExerciseArguments>(
    {
      command: 'pegbox.insertExercise',
      request: async (place, given) => {
        const told: WriteExerciseRequest = apartFromTarget(given);
        const named = told.scale !== undefined || told.chord !== undefined;
        const asked = named ? told : await askExercise(requests, memory, place);
        if (asked === undefined) return undefined;
        const words = exerciseText(asked);
        return {
          asked: `Insert ${words}`,
          done: `Inserted ${words}`,
          after: `with ${words}`,
          ask: (position) => requests.ask(REQUESTS.writeExercise, { uri: place.uri, position, ...asked }),
        };
      },
    },
    tools,
  );
}
