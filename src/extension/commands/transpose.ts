import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import { applyChange, type ChangeOutcome } from '../applyChange';
import { changeCommand, type ChangePlace } from '../changeCommand';
import type { ReportPages } from '../reportPages';
import type { ServerRequests } from '../serverRequests';

export interface TransposeArguments extends CommandTarget {
  /** Half steps, or a key to go to. */
  readonly by?: number | string;
}

const TITLE = 'Transpose passage';

export function registerTranspose(requests: ServerRequests, pages: ReportPages): vscode.Disposable {
  return changeCommand<TransposeArguments>(
    { command: 'pegbox.transpose', title: TITLE, complete: (given) => given?.by !== undefined },
    requests,
    async (place, given): Promise<ChangeOutcome> => {
      const by = given?.by ?? (await askBy(requests, place));
      if (by === undefined) return undefined;
      const { document, range } = place;
      const answer = await requests.ask(REQUESTS.transpose, { uri: document.uri.toString(), range, by });
      return applyChange(document, answer, `Transposed ${byText(by)}`, pages);
    },
  );
}

/** The server is asked while one types, so that a key which cannot be read is told at once. */
async function askBy(requests: ServerRequests, place: ChangePlace): Promise<number | string | undefined> {
  const value = await vscode.window.showInputBox({
    title: TITLE,
    prompt: 'Half steps up (5) or down (-2), or a key to go to (E minor)',
    validateInput: async (text) => {
      if (text.trim() === '') return 'Type a number of half steps, or a key.';
      const { document, range } = place;
      const answer = await requests.ask(REQUESTS.transpose, {
        uri: document.uri.toString(),
        range,
        by: readBy(text),
      });
      return 'error' in answer ? answer.error : undefined;
    },
  });
  return value === undefined ? undefined : readBy(value);
}

/**
 * A signed whole number is half steps, anything else a key.
 *
 * @example readBy('−2') // -2
 */
export function readBy(text: string): number | string {
  const plain = text.trim().replace(/^[−–]/, '-');
  return /^[+-]?\d+$/.test(plain) ? Number(plain) : plain;
}

function byText(by: number | string): string {
  if (typeof by === 'string') return `to ${by}`;
  const steps = Math.abs(by) === 1 ? '1 half step' : `${Math.abs(by)} half steps`;
  return by < 0 ? `down ${steps}` : `up ${steps}`;
}
