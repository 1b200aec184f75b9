import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget, type PlainTextAnswer } from '../../server/requests';
import type { ServiceError } from '../../service/serviceApi';
import { refuse } from '../applyChange';
import { rangeOf } from '../changeCommand';
import { plainRange } from '../ranges';
import type { ServerRequests } from '../serverRequests';
import { findTarget } from '../target';

/**
 * Copies the systems that are selected, else the whole file, as plain tab that says its tuning on top. Gives back the
 * text.
 */
export function registerCopyAsPlainText(requests: ServerRequests): vscode.Disposable {
  return vscode.commands.registerCommand(
    'pegbox.copyAsPlainText',
    async (given?: CommandTarget): Promise<PlainTextAnswer | ServiceError | undefined> => {
      try {
        const target = await findTarget(given);
        if (target === undefined) return undefined;
        const range = rangeOf(target);
        const answer = await requests.ask(REQUESTS.plainText, {
          uri: target.document.uri.toString(),
          ...(range && { range: plainRange(range) }),
        });
        if ('error' in answer) return refuse(answer.error);
        const { systems, text } = answer;
        if (systems === 0)
          return refuse('There is no tab here to copy: select a system, or nothing for the whole file.');
        await vscode.env.clipboard.writeText(text);
        void vscode.window.showInformationMessage(
          `Copied ${systems} system${systems === 1 ? '' : 's'} as plain text, with the tuning on top.`,
        );
        return answer;
      } catch (error) {
        return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    },
  );
}
