import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { FillRequest } from '../../service/song/songAnswer';
import { changeCommand, type ChangeTools } from '../changeCommand';
import { pickShapeWishes, pickStrum } from '../pickShapeWishes';
import { apartFromTarget } from '../target';

/** What is asked of filling, apart from the passage. */
export type FillWishes = Omit<FillRequest, 'range'>;

/** For keybindings and other extensions; `strum` says that nothing is to be asked. */
export interface FillArguments extends CommandTarget, FillWishes {}

const TITLE = 'Fill chords with shapes';

/** Writes a shape under every name of the chords rows. */
export function registerFillChords(tools: ChangeTools): Disposable {
  const { requests } = tools;
  return changeCommand<FillArguments>(
    {
      command: 'pegbox.fillChords',
      title: TITLE,
      complete: (given) => given?.strum !== undefined,
      request: async ({ document }, given) => {
        const wishes: FillWishes | undefined =
          given?.strum === undefined ? await askWishes() : apartFromTarget(given);
        if (!wishes) return undefined;
        const uri = document.uri.toString();
        const words = wishesText(wishes);
        return {
          asked: `Fill chords: ${words}`,
          done: `Filled chords: ${words}`,
          after: 'with shapes',
          ask: (range) => requests.ask(REQUESTS.fillChords, { uri, range, ...wishes }),
        };
      },
    },
    tools,
  );
}

async function askWishes(): Promise<FillWishes | undefined> {
  const strum = await pickStrum(TITLE);
  if (strum === undefined) return undefined;
  const wishes = await pickShapeWishes(TITLE);
  return wishes && { ...wishes, strum };
}

/**
 * Wishes in words.
 *
 * @example wishesText({ strum: 'beats', style: 'small' }) // 'small shapes, on every beat'
 */
export function wishesText({ style = 'full', open, highestFret, strum = 'once' }: FillWishes): string {
  const kind = open === false ? 'closed' : style;
  return [
    `${kind} shapes${open === true ? ' with open strings' : ''}`,
    ...(highestFret === undefined ? [] : [`up to fret ${highestFret}`]),
    strum === 'beats' ? 'on every beat' : 'once each',
  ].join(', ');
}
