import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget, type FindAnswer, type FindParams } from '../../server/requests';
import type { SoundWish } from '../../service/find/findAnswer';
import type { ServiceError } from '../../service/serviceApi';
import { refuse } from '../applyChange';
import type { FoundView } from '../library/foundView';
import { sendFiles } from '../library/sendFiles';
import { MOST_FILES, walk } from '../library/walk';
import { pick } from '../pick';
import { plainRange } from '../ranges';
import type { ServerRequests } from '../serverRequests';
import { apartFromTarget, findTarget } from '../target';

export interface FindArguments extends CommandTarget, SoundWish {}

type Answer = FindAnswer | ServiceError | undefined;

/**
 * Finds every passage of the workspace that sounds like the notes selected, and shows them in the side bar. A caller
 * that says by what gets the answer, and nothing is asked.
 */
export function registerFindBySound(requests: ServerRequests, view: FoundView): vscode.Disposable {
  return vscode.commands.registerCommand(
    'pegbox.findBySound',
    async (given?: FindArguments): Promise<Answer> => {
      try {
        const target = await findTarget(given);
        if (target === undefined) return undefined;
        const { document, range } = target;
        const editor = vscode.window.activeTextEditor;
        const selections = editor?.document === document ? editor.selections : [target.selection];
        const asked = {
          uri: document.uri.toString(),
          ranges: (range ? [range] : selections).map(plainRange),
        };
        // Without files, the selection alone is judged.
        const selected = await requests.ask(REQUESTS.findBySound, { ...asked, files: [] });
        if ('error' in selected) return refuse(selected.error);
        const told: SoundWish = apartFromTarget(given);
        const choice = told.by === undefined ? await askWish(selected) : { wish: told, label: labelOf(told) };
        if (choice === undefined) return undefined;
        const answer = await search(requests, { ...asked, ...choice.wish });
        if (answer === undefined) return undefined;
        if ('error' in answer) return refuse(answer.error);
        await view.show({ what: `${answer.name}, ${choice.label}`, files: answer.found });
        return answer;
      } catch (error) {
        return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    },
  );
}

const WISHES: readonly { readonly label: string; readonly detail: string; readonly wish: SoundWish }[] = [
  {
    label: 'the tune',
    detail: 'The highest notes go by the same steps, in any rhythm',
    wish: { by: 'tune' },
  },
  {
    label: 'the tune in the same rhythm',
    detail: 'The highest notes go by the same steps at the same times',
    wish: { by: 'tune', rhythm: true },
  },
  {
    label: 'the tune over any accompaniment',
    detail: 'Lower notes may be played between those of the tune',
    wish: { by: 'tune', over: true },
  },
  { label: 'the chords', detail: 'All notes that begin together, in any rhythm', wish: { by: 'chords' } },
  {
    label: 'the chords in the same rhythm',
    detail: 'All notes that begin together, at the same times',
    wish: { by: 'chords', rhythm: true },
  },
];

function labelOf({ by, rhythm, over }: SoundWish): string {
  const known = WISHES.find(
    ({ wish }) =>
      wish.by === by &&
      (wish.rhythm ?? false) === (rhythm ?? false) &&
      (wish.over ?? false) === (over ?? false),
  );
  return known?.label ?? 'the tune over any accompaniment, in the same rhythm';
}

async function askWish({
  together,
  name,
}: FindAnswer): Promise<{ wish: SoundWish; label: string } | undefined> {
  const items = WISHES.filter(({ wish }) => together || wish.by === 'tune').map(
    ({ label, detail, wish }) => ({
      label: label.charAt(0).toUpperCase() + label.slice(1),
      detail,
      chosen: { wish, label },
    }),
  );
  const item = await pick(items, {
    title: `Passages that sound like ${name}`,
    placeholder: 'What is to be the same',
  });
  return item?.chosen;
}

/** Undefined when it was cancelled. */
async function search(requests: ServerRequests, params: Omit<FindParams, 'files'>): Promise<Answer> {
  return vscode.window.withProgress(
    { location: vscode.ProgressLocation.Notification, title: 'Looking for passages', cancellable: true },
    async (progress, cancellation): Promise<Answer> => {
      const { files, more } = await walk(cancellation);
      if (cancellation.isCancellationRequested) return undefined;
      const first = await requests.ask(REQUESTS.findBySound, { ...params, files });
      if ('error' in first || first.missing.length === 0) return told(first, more);
      const wanted = new Set(first.missing);
      const missing = files.filter(({ uri }) => wanted.has(uri));
      let done = 0;
      const sent = await sendFiles(requests, missing, cancellation, (now) => {
        progress.report({
          increment: ((now - done) / missing.length) * 100,
          message: `${now} of ${missing.length} files read`,
        });
        done = now;
      });
      if (!sent) return undefined;
      return told(await requests.ask(REQUESTS.findBySound, { ...params, files }), more);
    },
  );
}

function told(answer: FindAnswer | ServiceError, more: boolean): FindAnswer | ServiceError {
  if (more)
    void vscode.window.showInformationMessage(
      `This folder holds more than ${MOST_FILES} tab files; the first ${MOST_FILES} were looked at. Open a folder in it to look at fewer.`,
    );
  if (!('error' in answer) && answer.missing.length > 0)
    void vscode.window.showInformationMessage(
      `${answer.missing.length === 1 ? 'One file' : `${answer.missing.length} files`} could not be read and were left out.`,
    );
  return answer;
}
