import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { SimplifyRequest } from '../../service/serviceApi';
import { refuse } from '../applyChange';
import { askText } from '../askText';
import { changeCommand, type ChangePlace, type ChangeTools } from '../changeCommand';
import { firstBar } from '../firstBar';
import type { ServerRequests } from '../serverRequests';
import { apartFromTarget } from '../target';

/** What a passage may ask of a student at most. */
export type Caps = Omit<SimplifyRequest, 'range'>;

export interface SimplifyArguments extends CommandTarget, Caps {}

const TITLE = 'Simplify passage for a student';

/** A cap that is a figure: how it is asked for and told. */
interface Figure {
  readonly cap: 'fingers' | 'span' | 'highestFret' | 'speed';
  readonly label: string;
  readonly detail: string;
  readonly prompt: string;
  /** Engineering values to start from; the user types over them. */
  readonly usual: string;
  readonly told: (value: number) => string;
}

const FIGURES: readonly Figure[] = [
  {
    cap: 'fingers',
    label: 'Fewer fingers at once',
    detail: 'Inner notes go where more would be down.',
    prompt: 'Most fingers at once, 1 to 4',
    usual: '3',
    told: (value) => (value === 1 ? '1 finger' : `${value} fingers`),
  },
  {
    cap: 'span',
    label: 'A smaller span',
    detail: 'From the lowest to the highest stopped fret, along the neck.',
    prompt: 'Widest span in millimetres along the neck',
    usual: '80',
    told: (value) => `${value} mm of span`,
  },
  {
    cap: 'highestFret',
    label: 'Low on the neck',
    detail: 'No fret above one that you name.',
    prompt: 'Highest fret',
    usual: '5',
    told: (value) => `fret ${value}`,
  },
  {
    cap: 'speed',
    label: 'Slower',
    detail: 'Fewer notes a second, one after the other.',
    prompt: 'Most notes a second',
    usual: '4',
    told: (value) => `${value} notes a second`,
  },
];

/** Tune and bass are kept and inner notes go, until the passage keeps to the limits. */
export function registerSimplify(tools: ChangeTools): vscode.Disposable {
  const { requests } = tools;
  return changeCommand<SimplifyArguments>(
    {
      command: 'pegbox.simplify',
      title: TITLE,
      complete: (given) => Object.keys(apartFromTarget(given)).length > 0,
      request: async (place, given) => {
        const told: Caps = apartFromTarget(given);
        const caps = Object.keys(told).length > 0 ? told : await askCaps(requests, place);
        if (caps === undefined) return undefined;
        const uri = place.document.uri.toString();
        const limits = capsText(caps);
        return {
          asked: `Simplify for a student: ${limits}`,
          done: `Simplified for a student: ${limits}`,
          after: 'for a student',
          ask: (range) => requests.ask(REQUESTS.simplify, { uri, range, ...caps }),
        };
      },
    },
    tools,
  );
}

/**
 * Limits in words.
 *
 * @example capsText({ barres: false, fingers: 3 }) // 'at most 3 fingers, no barres'
 */
export function capsText(caps: Caps): string {
  const figures = FIGURES.flatMap(({ cap, told }) => {
    const value = caps[cap];
    return value === undefined ? [] : [told(value)];
  });
  return [
    ...(figures.length > 0 ? [`at most ${figures.join(', ')}`] : []),
    ...(caps.barres === false ? ['no barres'] : []),
  ].join(', ');
}

/** Asks which limits there are, then for the figure of each. */
async function askCaps(requests: ServerRequests, place: ChangePlace): Promise<Caps | undefined> {
  const barres = {
    label: 'No barres',
    detail: 'Each finger stops one string.',
    figure: undefined,
    picked: true,
  };
  const items = [barres, ...FIGURES.map((figure) => ({ ...figure, figure }))];
  const picked = await vscode.window.showQuickPick(items, {
    title: TITLE,
    placeHolder: 'Tick what the student cannot do yet',
    canPickMany: true,
    ignoreFocusOut: true,
  });
  if (picked === undefined) return undefined;
  if (picked.length === 0) {
    refuse('Nothing was ticked, so there is nothing to simplify. Tick one limit or more.');
    return undefined;
  }
  const caps: { -readonly [Cap in keyof Caps]: Caps[Cap] } = {};
  for (const { figure } of picked) {
    if (figure === undefined) {
      caps.barres = false;
      continue;
    }
    const value = await askFigure(requests, place, figure);
    if (value === undefined) return undefined;
    caps[figure.cap] = value;
  }
  return caps;
}

async function askFigure(
  requests: ServerRequests,
  { document, range }: ChangePlace,
  { cap, prompt, usual }: Figure,
): Promise<number | undefined> {
  const uri = document.uri.toString();
  const text = await askText({
    title: TITLE,
    prompt,
    value: usual,
    check: async (typed) => {
      const value = readFigure(typed);
      if (value === undefined) return `Type a number, such as ${usual}.`;
      const answer = await requests.ask(REQUESTS.simplify, { uri, range: firstBar(range), [cap]: value });
      return 'error' in answer ? answer.error : undefined;
    },
  });
  return text === undefined ? undefined : readFigure(text);
}

/** A number as it is typed, with a point or a comma; undefined for anything else. */
function readFigure(text: string): number | undefined {
  const plain = text.trim().replace(',', '.');
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : undefined;
}
