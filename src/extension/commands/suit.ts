import * as vscode from 'vscode';
import type { Range } from 'vscode-languageclient';
import { REQUESTS, type CommandTarget, type SuitAnswer, type SuitParams } from '../../server/requests';
import type { SuitedTuning, SuitRequest, SuitResult } from '../../service/serviceApi';
import { refuse, type ChangeOutcome } from '../applyChange';
import { rangeOf, type ChangeTools } from '../changeCommand';
import { conversion } from '../conversion';
import { FollowedRange } from '../followedRange';
import type { HelpPages } from '../helpPages';
import { pick } from '../pick';
import { pickPassage } from '../pickPassage';
import { fileName } from '../fileName';
import { plainRange } from '../ranges';
import { suitPage } from '../suitPage';
import { costText, moveText, retuningText, ringText, suitedName } from '../suitText';
import { findTarget } from '../target';

export interface SuitArguments extends CommandTarget, Omit<SuitRequest, 'range'> {}

/** What the command gives back: the answer, and what was done with it. */
export type SuitOutcome = SuitAnswer | ChangeOutcome;

const TITLE = 'Which tuning suits this passage';

type Limits = Pick<SuitRequest, 'within' | 'anyKey' | 'keep'>;

/** The path of the page among the help pages. */
const PAGE = '/Which tuning suits.md';

/**
 * Searches for the tuning that suits a passage, shows what was found, and opens the preview of a conversion to what is
 * chosen. A caller that gives the limits gets the answer itself, and nothing is asked.
 */
export function registerSuit(tools: ChangeTools, pages: HelpPages): vscode.Disposable {
  const { requests, previews } = tools;
  return vscode.commands.registerCommand(
    'pegbox.suit',
    async (given?: SuitArguments): Promise<SuitOutcome> => {
      try {
        const target = await findTarget(given);
        if (target === undefined) return undefined;
        const { document } = target;
        const told = given?.within !== undefined || given?.anyKey !== undefined;
        const passage = told ? (rangeOf(target) ?? 'all') : await pickPassage(requests, target, TITLE);
        if (passage === 'none') return refuse('There are no bars here yet: write a system of tab first.');
        if (passage === undefined) return undefined;
        const range = passage === 'all' ? undefined : plainRange(passage);
        const limits = told ? limitsOf(given) : await pickLimits();
        if (limits === undefined) return undefined;
        const uri = document.uri.toString();
        if (told) return await search(tools, { uri, range, ...limits });
        const followed = new FollowedRange(document, range);
        try {
          const answer = await search(tools, { uri, range, ...limits });
          if (answer === undefined) return undefined;
          if ('error' in answer) return refuse(answer.error);
          pages.put(PAGE, suitPage({ file: fileName(document.uri), limits: limitsText(limits) }, answer));
          // As with a change: what keeps someone from harm is shown without being asked for.
          for (const caution of answer.cautions) warn(caution, () => pages.show(PAGE));
          const chosen = await pickSuited(answer, followed.edited);
          if (chosen === 'page') await pages.show(PAGE);
          if (chosen === 'page' || chosen === undefined) return undefined;
          if (followed.lost) return refuse('The bars that were asked about are no longer there.');
          return await previews.open(document, followed.range, conversionTo(tools, document, chosen));
        } finally {
          followed.dispose();
        }
      } catch (error) {
        return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    },
  );
}

/** With a button, so that the editor shows all of it at once. */
function warn(caution: string, showPage: () => unknown): void {
  const show = 'Show all as a page';
  void vscode.window
    .showWarningMessage(caution, show)
    .then((taken) => (taken === show ? showPage() : undefined));
}

function limitsOf({ within, anyKey, keep }: Limits): Limits {
  return {
    ...(within !== undefined && { within }),
    ...(anyKey !== undefined && { anyKey }),
    ...(keep !== undefined && { keep }),
  };
}

async function pickLimits(): Promise<Limits | undefined> {
  const keys = [
    { label: 'At pitch', detail: 'Every note sounds as it is written.', anyKey: false },
    {
      label: 'In any key',
      detail: 'The passage may be transposed as a whole; this takes longer.',
      anyKey: true,
    },
  ];
  const key = await pick(keys, { title: TITLE, placeholder: 'May the passage be transposed?' });
  if (key === undefined) return undefined;
  const spans = [1, 2, 3].map((within) => ({
    label: `Each string within ${within} half ${within === 1 ? 'step' : 'steps'}`,
    detail: ['Soon done.', 'Usual: a whole tone up or down.', 'Takes longer.'][within - 1] ?? '',
    within,
  }));
  const span = await pick(spans, {
    title: TITLE,
    placeholder: 'How far may strings be retuned? A string never goes above what it bears.',
    active: spans[1],
  });
  return span && { within: span.within, anyKey: key.anyKey };
}

function limitsText({ within = 2, anyKey = false }: Limits): string {
  const steps = `${within} half ${within === 1 ? 'step' : 'steps'}`;
  return `${anyKey ? 'in any key' : 'at pitch'}, each string within ${steps} and what it bears`;
}

/** Asks the server and shows how far it has come; undefined when the user called it off. */
async function search(
  { requests }: ChangeTools,
  params: SuitParams & { readonly range: Range | undefined },
): Promise<SuitAnswer | undefined> {
  const location = vscode.ProgressLocation.Notification;
  return vscode.window.withProgress(
    { location, title: TITLE, cancellable: true },
    (progress, cancellation) => {
      let reached = 0;
      return requests.askLong(
        REQUESTS.suit,
        params,
        cancellation,
        ({ percentage = reached, message = '' }) => {
          progress.report({ increment: Math.max(0, percentage - reached), message });
          reached = Math.max(reached, percentage);
        },
      );
    },
  );
}

interface SuitItem extends vscode.QuickPickItem {
  readonly chosen: SuitedTuning | 'page' | undefined;
}

/** @param edited whether the text was edited since it was asked about */
async function pickSuited(result: SuitResult, edited: boolean): Promise<SuitedTuning | 'page' | undefined> {
  const { here, named, byStringsChanged } = result;
  const playable = named.filter(({ cost }) => cost !== null);
  const left = named.length - playable.length;
  const out =
    left === 0 ? '' : ` ${left === 1 ? '1 named tuning' : `${left} named tunings`} would leave a note out.`;
  const retuned = byStringsChanged.map(({ tuning }) => suitItem(tuning));
  const trade = playable.map(suitItem);
  const items: SuitItem[] = [
    {
      label: '$(book) Show all as a page',
      detail: `With retunings and cautions.${out}`,
      chosen: 'page',
    },
    heading('fewest strings changed first'),
    ...retuned,
    heading('tunings of the trade'),
    ...trade,
  ];
  const now = here === null ? 'As it stands a note would be left out.' : `As it stands: ${costText(here)}.`;
  const picked = await pick(items, {
    title: `${TITLE}: best for this cost, this passage, these limits`,
    placeholder: `${edited ? 'For the text before your last edits. ' : ''}${now} Choose a tuning to see the conversion.`,
    active: cheapestChange(retuned) ?? cheapestChange(trade),
  });
  return picked?.chosen;
}

/** The tuning of least cost other than the one that the passage stands in, which is nothing to go to. */
function cheapestChange(items: readonly SuitItem[]): SuitItem | undefined {
  let cheapest: SuitItem | undefined;
  let least = Infinity;
  for (const item of items) {
    if (typeof item.chosen !== 'object') continue;
    const { cost, stringsChanged, halfSteps } = item.chosen;
    if (cost === null || cost >= least || (stringsChanged === 0 && halfSteps === 0)) continue;
    [cheapest, least] = [item, cost];
  }
  return cheapest;
}

function heading(label: string): SuitItem {
  return { label, kind: vscode.QuickPickItemKind.Separator, chosen: undefined };
}

function suitItem(tuning: SuitedTuning): SuitItem {
  const move = moveText(tuning);
  const hardest = tuning.hardest === '' ? [] : [`hardest: ${tuning.hardest}`];
  return {
    label: suitedName(tuning),
    description: [costText(tuning), retuningText(tuning), ...(move === '' ? [] : [move])].join(' · '),
    detail: [ringText(tuning), ...hardest].join(' · '),
    chosen: tuning,
  };
}

function conversionTo(
  { requests }: ChangeTools,
  document: vscode.TextDocument,
  { tuning, halfSteps }: SuitedTuning,
): ReturnType<typeof conversion> {
  const by = halfSteps === 0 ? {} : { by: halfSteps };
  return conversion(requests, document, { tuning, keep: 'sound', ...by });
}
