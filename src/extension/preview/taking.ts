import * as vscode from 'vscode';
import { REQUESTS, type ChangeVariant } from '../../server/requests';
import type { ServiceError } from '../../service/serviceApi';
import { applyEdits, refuse, type ChangeOutcome } from '../applyChange';
import { plainPosition } from '../ranges';
import { countsText } from '../reportText';
import { WAYS_IN_PREVIEW } from '../requestedChange';
import type { ServerRequests } from '../serverRequests';
import { closestVariant } from './closestVariant';
import { common } from './movedRange';
import type { Preview } from './preview';
import { fileName } from '../fileName';
import type { Previews } from './previews';
import { showWhereItIs } from './previewTabs';

const LOOK_AGAIN = 'The text was changed meanwhile; look at the preview again and take it then.';

/** How long the last line on a change stays in the status bar, in milliseconds. */
const READING_TIME = 10_000;

/** A place in one of the two texts of a preview. */
export interface PreviewPlace {
  readonly uri: vscode.Uri;
  readonly position: vscode.Position;
}

/** Makes the changes that previews show: each one edit, which one undo takes back. */
export class Taking {
  constructor(
    private readonly previews: Previews,
    private readonly requests: Pick<ServerRequests, 'ask'>,
  ) {}

  /** Makes the change as it is shown. */
  async all(preview: Preview): Promise<ChangeOutcome> {
    const refused = await bringUpToDate(preview);
    if (refused) return refused;
    const { variant, version, change, trouble } = preview;
    if (variant === undefined || version === undefined) return nothingTaken(trouble ?? LOOK_AGAIN);
    return this.take(preview, variant, version, change.done);
  }

  /**
   * Makes the change in one section alone. The server is asked for it anew, so that the fields above and below the
   * section are stated as it needs them; of several ways the one is taken that is nearest to the one shown.
   */
  async section(preview: Preview, { uri, position }: PreviewPlace): Promise<ChangeOutcome> {
    const refused = await bringUpToDate(preview);
    if (refused) return refused;
    const { variant, trouble, change, document, range, afterText } = preview;
    if (variant === undefined) return nothingTaken(trouble ?? LOOK_AGAIN);
    const { passage } = await this.requests.ask(REQUESTS.counterpart, {
      uri: uri.toString(),
      position: plainPosition(position),
      there: document.uri.toString(),
    });
    const share = passage && common(passage.range, range);
    if (share === undefined) return nothingTaken('Put the cursor in a section that changes.');
    const answer = await change.ask(share, WAYS_IN_PREVIEW);
    if ('error' in answer) return nothingTaken(answer.error);
    const nearest = closestVariant([answer, ...(answer.alternatives ?? [])], afterText);
    if (nearest === undefined || nearest.edits.length === 0)
      return nothingTaken(`Nothing changes in “${passage?.title ?? ''}”; put the cursor in another section.`);
    return this.take(preview, nearest, answer.version, `${passage?.title ?? ''}: ${change.done}`);
  }

  private async take(
    preview: Preview,
    { edits, report }: ChangeVariant,
    version: number,
    done: string,
  ): Promise<ChangeOutcome> {
    const { document } = preview;
    const made = await this.previews.making(preview, () => applyEdits(document, version, edits));
    if (!made) return nothingTaken(LOOK_AGAIN);
    await showWhereItIs(document);
    await this.previews.close(preview);
    // The report was told when the preview opened; a second notification would only hide the text.
    vscode.window.setStatusBarMessage(`$(check) ${done}: ${countsText(report)}.`, READING_TIME);
    return { report };
  }
}

/** Only what the user saw is taken: when the text has moved on and the change is now another, it is shown first. */
async function bringUpToDate(preview: Preview): Promise<ServiceError | undefined> {
  const { uri, isClosed, isUntitled } = preview.document;
  if (isClosed) {
    if (isUntitled) return nothingTaken(`${fileName(uri)} was closed.`);
    preview.document = await vscode.workspace.openTextDocument(uri);
  }
  // A document that was closed and opened again counts its versions anew.
  const { version, beforeText, document } = preview;
  if (version === document.version && beforeText === document.getText()) return undefined;
  const seen = preview.afterText;
  await preview.renew();
  if (preview.afterText === seen) return undefined;
  return nothingTaken(LOOK_AGAIN);
}

function nothingTaken(why: string): ServiceError {
  return refuse(`Nothing was taken. ${why}`);
}
