import type { Disposable } from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { SecondGuitarRequest } from '../../service/song/songAnswer';
import { askText } from '../askText';
import { changeCommand, type ChangePlace, type ChangeTools } from '../changeCommand';
import { firstBar } from '../firstBar';
import { pick } from '../pick';
import { pickStrum } from '../pickShapeWishes';
import { pickTuning } from '../pickStrings';
import type { ServerRequests } from '../serverRequests';
import { apartFromTarget } from '../target';

type Wishes = Omit<SecondGuitarRequest, 'range'>;
type Neck = Pick<Wishes, 'tuning' | 'capo'>;

/** For keybindings and other extensions; with a `name` nothing is asked. */
export interface SecondGuitarArguments extends CommandTarget, Partial<Wishes> {}

const TITLE = 'Second guitar';

/** The same chords in a part of its own, out of the first player's way. */
export function registerSecondGuitar(tools: ChangeTools): Disposable {
  const { requests } = tools;
  return changeCommand<SecondGuitarArguments>(
    {
      command: 'pegbox.secondGuitar',
      title: TITLE,
      complete: (given) => given?.name !== undefined,
      request: async (place, given) => {
        const said = apartFromTarget(given);
        const wishes = given?.name === undefined ? await ask(requests, place) : { ...said, name: given.name };
        if (!wishes) return undefined;
        const uri = place.document.uri.toString();
        const { name, tuning, capo } = wishes;
        const where = [
          ...(tuning === undefined ? [] : [`in ${tuning}`]),
          ...(capo === undefined ? [] : [capo === 'none' ? 'without capo' : `with capo ${capo}`]),
        ].join(', ');
        return {
          asked: `Second guitar: “${name}”${where === '' ? '' : `, ${where}`}`,
          done: `Second guitar “${name}” written${where === '' ? '' : `, ${where}`}`,
          after: `with “${name}”`,
          ask: (range) => requests.ask(REQUESTS.secondGuitar, { uri, range, ...wishes }),
        };
      },
    },
    tools,
  );
}

async function ask(requests: ServerRequests, place: ChangePlace): Promise<Wishes | undefined> {
  const name = await askName(requests, place);
  if (name === undefined) return undefined;
  const neck = await askNeck(requests, place, name);
  if (!neck) return undefined;
  const strum = await pickStrum(TITLE);
  return strum && { name, ...neck, strum };
}

/** One bar is tried while one types, so that a name which is taken is told at once. */
function askName(requests: ServerRequests, { document, range }: ChangePlace): Promise<string | undefined> {
  const uri = document.uri.toString();
  return askText({
    title: TITLE,
    prompt: 'A name for the new part',
    placeholder: 'High guitar',
    check: async (name) => {
      const answer = await requests.ask(REQUESTS.secondGuitar, { uri, range: firstBar(range), name });
      return 'error' in answer ? answer.error : undefined;
    },
  });
}

async function askNeck(
  requests: ServerRequests,
  place: ChangePlace,
  name: string,
): Promise<Neck | undefined> {
  const at = place.range?.start ?? { line: 0, character: 0 };
  const items = [
    {
      label: 'As the first guitar',
      detail: 'The same tuning and capo; its shapes lie elsewhere on the neck.',
      choose: (): Promise<Neck | undefined> => Promise.resolve({}),
    },
    {
      label: 'Another capo…',
      detail: 'The chords are named as they are played under it.',
      choose: () => askCapo(requests, place, name),
    },
    {
      label: 'Another tuning…',
      detail: 'The same chords in another tuning.',
      choose: async (): Promise<Neck | undefined> => {
        const tuning = await pickTuning(requests, place.document, at, TITLE);
        return tuning === undefined ? undefined : { tuning };
      },
    },
  ];
  return (await pick(items, { title: TITLE, placeholder: 'Which tuning and capo?' }))?.choose();
}

async function askCapo(
  requests: ServerRequests,
  { document, range }: ChangePlace,
  name: string,
): Promise<Neck | undefined> {
  const uri = document.uri.toString();
  const capo = await askText({
    title: TITLE,
    prompt: 'A fret (5), none, or a fret on some strings (2 on 5 4 3)',
    check: async (typed) => {
      const bar = firstBar(range);
      const answer = await requests.ask(REQUESTS.secondGuitar, { uri, range: bar, name, capo: typed });
      return 'error' in answer ? answer.error : undefined;
    },
  });
  return capo === undefined ? undefined : { capo: capo.trim() };
}
