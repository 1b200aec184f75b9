import type { Memento, QuickPickItem } from 'vscode';
import { REQUESTS } from '../server/requests';
import { SCALE_NAMES } from '../music/scaleNames';
import type { Direction, WriteExerciseRequest } from '../service/write/writeRequest';
import { askText } from './askText';
import { exerciseText } from './exerciseText';
import { pick } from './pick';
import { pickNoteValue } from './pickNoteValue';
import type { ServerRequests } from './serverRequests';
import type { WritePlace } from './writeAt';

const TITLE = 'Insert scale or arpeggio';
const REMEMBERED = 'pegbox.exercise';

/** What the user chose last, so that Enter chooses it again. */
interface Choices {
  readonly kind: string;
  readonly root: string;
  readonly chord: string;
  readonly compass: string;
  readonly fret: string;
  readonly direction: Direction;
  readonly fingers: boolean;
  readonly request: WriteExerciseRequest;
}

/** A scale by its name, an arpeggio, or the exercise that was chosen last. */
interface KindItem extends QuickPickItem {
  readonly what: string;
  readonly again?: WriteExerciseRequest;
}

type Compass = Pick<WriteExerciseRequest, 'inPosition' | 'octaves'>;
/** Asks the server what comes of a request; the sentence that refuses it, or nothing. */
type Attempt = (request: WriteExerciseRequest) => Promise<string | undefined>;

const ARPEGGIO = 'arpeggio';
const IN_POSITION = 'in a position';

const COMPASSES = [
  { label: 'Open position', detail: 'Open strings and the first four frets.', compass: 'open' },
  {
    label: 'In a position…',
    detail: 'The index finger stays at a fret that you name, one finger a fret.',
    compass: IN_POSITION,
  },
  { label: 'One octave', detail: 'Anywhere on the neck, with the least effort.', compass: '1' },
  { label: 'Two octaves', detail: 'Anywhere on the neck, with the least effort.', compass: '2' },
  { label: 'Three octaves', detail: 'Anywhere on the neck, with the least effort.', compass: '3' },
];

const DIRECTIONS: readonly { readonly label: string; readonly direction: Direction }[] = [
  { label: 'Up and down', direction: 'up and down' },
  { label: 'Up', direction: 'up' },
  { label: 'Down', direction: 'down' },
];

const FINGERS = [
  { label: 'With a row of fingers', fingers: true },
  { label: 'Without fingers', fingers: false },
];

/** Asks for an exercise step by step, each with what was chosen last; or for the last one again. */
export async function askExercise(
  requests: ServerRequests,
  memory: Memento,
  { uri, position }: WritePlace,
): Promise<WriteExerciseRequest | undefined> {
  const attempt: Attempt = async (request) => {
    const answer = await requests.ask(REQUESTS.writeExercise, { uri, position, ...request });
    return 'error' in answer ? answer.error : undefined;
  };
  const last = memory.get<Partial<Choices>>(REMEMBERED, {});
  const kinds: readonly KindItem[] = [
    ...SCALE_NAMES.map((name) => ({ label: capital(name), what: name })),
    { label: 'Arpeggio of a chord…', what: ARPEGGIO },
  ];
  const again: readonly KindItem[] = last.request
    ? [
        {
          label: 'The last one again',
          description: exerciseText(last.request),
          what: '',
          again: last.request,
        },
      ]
    : [];
  const picked = await pick([...again, ...kinds], {
    title: TITLE,
    placeholder: 'Which scale, or an arpeggio?',
    active: kinds.find(({ what }) => what === last.kind),
  });
  if (picked === undefined) return undefined;
  if (picked.again) return picked.again;
  const kind = picked.what;
  const tones = kind === ARPEGGIO ? await askChord(attempt, last) : await askRoot(attempt, last, kind);
  if (tones === undefined) return undefined;
  const compass = await askCompass(attempt, tones, last);
  if (compass === undefined) return undefined;
  const direction = await pick(DIRECTIONS, {
    title: TITLE,
    placeholder: 'Which way?',
    active: DIRECTIONS.find((one) => one.direction === last.direction),
  });
  if (direction === undefined) return undefined;
  const value = await pickNoteValue(memory, TITLE, 'How long is each note?');
  if (value === undefined) return undefined;
  const fingers = await pick(FINGERS, {
    title: TITLE,
    placeholder: 'Should the fingers be named?',
    active: FINGERS.find((one) => one.fingers === last.fingers),
  });
  if (fingers === undefined) return undefined;
  const request: WriteExerciseRequest = {
    ...tones.request,
    ...compass.request,
    direction: direction.direction,
    value,
    fingers: fingers.fingers,
  };
  const chosen = {
    ...last,
    ...tones.chosen,
    ...compass.chosen,
    kind,
    direction: direction.direction,
    fingers: fingers.fingers,
    request,
  };
  void memory.update(REMEMBERED, chosen);
  return request;
}

/** An answer to a question: what is asked of the server, and what is remembered. */
interface Answered {
  readonly request: WriteExerciseRequest;
  readonly chosen: Partial<Choices>;
}

async function askRoot(
  attempt: Attempt,
  { root = '' }: Partial<Choices>,
  kind: string,
): Promise<Answered | undefined> {
  const typed = await askText({
    title: TITLE,
    prompt: `On which note does the ${kind} scale begin, as you play it?`,
    placeholder: 'D',
    value: root,
    check: (text) => attempt({ scale: `${text.trim()} ${kind}` }),
  });
  if (typed === undefined) return undefined;
  return { request: { scale: `${typed.trim()} ${kind}` }, chosen: { root: typed.trim() } };
}

async function askChord(attempt: Attempt, { chord = '' }: Partial<Choices>): Promise<Answered | undefined> {
  const typed = await askText({
    title: TITLE,
    prompt: 'The chord, as you play it',
    placeholder: 'Am7',
    value: chord,
    check: (text) => attempt({ chord: text }),
  });
  return typed === undefined
    ? undefined
    : { request: { chord: typed.trim() }, chosen: { chord: typed.trim() } };
}

async function askCompass(
  attempt: Attempt,
  { request }: Answered,
  last: Partial<Choices>,
): Promise<Answered | undefined> {
  const picked = await pick(COMPASSES, {
    title: TITLE,
    placeholder: 'Where on the neck?',
    active: COMPASSES.find(({ compass }) => compass === last.compass),
  });
  if (picked === undefined) return undefined;
  const { compass } = picked;
  if (compass !== IN_POSITION) {
    const wanted: Compass = compass === 'open' ? { inPosition: 'open' } : { octaves: Number(compass) };
    return { request: wanted, chosen: { compass } };
  }
  const fret = await askText({
    title: TITLE,
    prompt: 'The fret of the index finger',
    placeholder: '5',
    value: last.fret ?? '',
    check: async (text) =>
      /^\s*\d+\s*$/.test(text)
        ? attempt({ ...request, inPosition: Number(text) })
        : 'Type a fret as a whole number, such as 5.',
  });
  return fret === undefined
    ? undefined
    : { request: { inPosition: Number(fret) }, chosen: { compass, fret: fret.trim() } };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
