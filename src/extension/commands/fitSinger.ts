import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { FitRequest, SingerAnswer, SingerWay } from '../../service/singer/singerAnswer';
import type { ServiceError } from '../../service/serviceApi';
import { refuse, type ChangeOutcome } from '../applyChange';
import { rangeOf, type ChangeTools } from '../changeCommand';
import { FollowedRange } from '../followedRange';
import type { HelpPages } from '../helpPages';
import { pick } from '../pick';
import { fileName } from '../fileName';
import { plainRange } from '../ranges';
import type { RequestedChange } from '../requestedChange';
import { singerPage } from '../singerPage';
import { askSinger, askTune, SINGER_TITLE, type AskSinger, type SingerWishes } from '../singerQuestions';
import { apartFromTarget, findTarget } from '../target';

export interface FitSingerArguments extends CommandTarget, SingerWishes {}

/** The path of the page among the help pages. */
const PAGE = '/Fit a singer.md';

/** What the command gives back: the answer, and what was done with it. */
export type FitSingerOutcome = SingerAnswer | ServiceError | ChangeOutcome;

/**
 * Asks for singer and tune, lists the ways, and opens the preview of the one that is chosen. It works on the bars that
 * are selected, else on the whole file. A caller that says what suits the singer gets the answer, and nothing is asked;
 * with `preview` the list is shown and what is chosen.
 */
export function registerFitSinger(tools: ChangeTools, pages: HelpPages): vscode.Disposable {
  const { requests, previews } = tools;
  return vscode.commands.registerCommand(
    'pegbox.fitSinger',
    async (given?: FitSingerArguments): Promise<FitSingerOutcome> => {
      try {
        const target = await findTarget(given);
        if (target === undefined) return undefined;
        const { document } = target;
        const selected = rangeOf(target);
        const followed = new FollowedRange(document, selected && plainRange(selected));
        try {
          const uri = document.uri.toString();
          const ask: AskSinger = (wishes) =>
            requests.ask(REQUESTS.fitSinger, { uri, range: followed.range, ...wishes });
          const told = given?.voice ?? given?.compass ?? given?.key;
          if (told !== undefined && given?.preview !== true) return await ask(apartFromTarget(given));
          const singer = told === undefined ? await askSinger(ask) : undefined;
          const wishes = told === undefined ? singer && (await askTune(singer, ask)) : apartFromTarget(given);
          if (wishes === undefined) return undefined;
          const answer = await ask(wishes);
          if ('error' in answer) return refuse(answer.error);
          const way = await pickWay(answer);
          if (way === 'page') {
            pages.put(PAGE, singerPage(fileName(document.uri), answer));
            await pages.show(PAGE);
          }
          if (way === 'page' || !way?.request) return undefined;
          if (followed.lost) return refuse('The bars that were asked about are no longer there.');
          for (const caution of way.cautions)
            void vscode.window.showWarningMessage(caution, 'I have read it');
          return await previews.open(document, followed.range, fitChange(tools, uri, way, way.request));
        } finally {
          followed.dispose();
        }
      } catch (error) {
        return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    },
  );
}

interface WayItem extends vscode.QuickPickItem {
  readonly way: SingerWay | 'page';
}

async function pickWay(answer: SingerAnswer): Promise<SingerWay | 'page' | undefined> {
  const { voice, tune, tooWide, ways } = answer;
  const items: WayItem[] = [
    { label: '$(book) Show all as a page', detail: 'With what to know about them.', way: 'page' },
    ...ways.map((way) => ({
      label: way.title,
      description: way.words,
      detail: wayText(way),
      way,
    })),
  ];
  const sung = voice && tune ? `${tune.low}–${tune.high} for ${voice.low}–${voice.high}` : '';
  const wide = tooWide > 0 ? `, ${halfSteps(tooWide)} wider than the voice` : '';
  const picked = await pick(items, {
    title: sung === '' ? SINGER_TITLE : `${SINGER_TITLE}: ${sung}${wide}`,
    placeholder: 'Best first; every shape stays. Choose a way to see the change.',
    active: items.find(({ way }) => way !== 'page' && way.request),
  });
  return picked?.way;
}

/** How the tune lies, what the strings bear, what is left of the neck. */
function wayText({ lies, strain, fretsLeft, cautions }: SingerWay): string {
  return [
    ...(lies ? [lies.words] : []),
    `${fretsLeft} frets left`,
    ...(strain.change === 0 ? [] : [lowerFirst(strain.words)]),
    ...(cautions.length > 0 ? ['strings go up: read the cautions'] : []),
  ].join(' · ');
}

function fitChange(
  { requests }: ChangeTools,
  uri: string,
  { title, words }: SingerWay,
  { capoBy, tuningBy }: FitRequest,
): RequestedChange {
  return {
    asked: `${title}: ${lowerFirst(words)}`,
    done: `${title}: ${lowerFirst(words)}`,
    after: 'for the singer',
    ask: (range) => requests.ask(REQUESTS.applyFit, { uri, range, capoBy, tuningBy }),
  };
}

/** `1 half step`, `3 half steps`. */
function halfSteps(count: number): string {
  const rounded = Math.round(count * 100) / 100;
  return `${rounded} half ${rounded === 1 ? 'step' : 'steps'}`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
