import * as vscode from 'vscode';
import { REQUESTS } from '../../server/requests';
import { refuse } from '../applyChange';
import { pick } from '../pick';
import { askedAt } from '../ranges';
import { fileName } from '../fileName';
import { saveFile } from '../saveFile';
import type { ServerRequests } from '../serverRequests';
import type { LastPlace } from '../views/lastPlace';

export interface HandoutArguments {
  /** An SVG picture of one page, or text. */
  readonly as?: 'svg' | 'text';
  /** The tuning to come from. */
  readonly from?: string;
  /** The address of the file to write; asked for when it is left out. */
  readonly to?: string;
}

const TITLE = 'Save handout';

/** The handout of the tuning at the cursor: saved as a file, or copied as text. */
export class Handouts {
  constructor(
    private readonly requests: ServerRequests,
    private readonly place: LastPlace,
  ) {}

  /**
   * Makes a handout of the tuning that holds where the cursor last stood.
   * @returns what was done, or why it was not, in a sentence; undefined when the user called it off
   */
  async make(
    as: 'svg' | 'text' | 'copy',
    { from, to }: Pick<HandoutArguments, 'from' | 'to'>,
  ): Promise<string | undefined> {
    const { current } = this.place;
    if (!current) return 'Put the cursor into a tab first: a handout is made of the tuning there.';
    const { uri } = current.document;
    const at = askedAt(current);
    const handout = await this.requests.ask(
      REQUESTS.tuningHandout,
      from === undefined ? at : { ...at, from },
    );
    if ('error' in handout) return handout.error;
    if (as === 'copy') {
      await vscode.env.clipboard.writeText(handout.text);
      return 'The handout is copied as text.';
    }
    const file = await saveFile(
      {
        title: TITLE,
        name: handout.fileName,
        ...(as === 'svg' ? { text: handout.svg, ending: 'svg' } : { text: handout.text, ending: 'txt' }),
      },
      uri,
      to === undefined ? undefined : vscode.Uri.parse(to, true),
    );
    return file && `Saved ${fileName(file)}.`;
  }
}

/** Registers the command that saves a handout, by a dialog unless the caller says where. */
export function registerSaveHandout(handouts: Handouts): vscode.Disposable {
  return vscode.commands.registerCommand('pegbox.saveHandout', async (given: HandoutArguments = {}) => {
    try {
      const as = given.as ?? (await askKind());
      if (as === undefined) return undefined;
      const words = await handouts.make(as, given);
      if (words !== undefined) void vscode.window.showInformationMessage(words);
      return words;
    } catch (error) {
      return refuse(`Pegbox could not save it: ${error instanceof Error ? error.message : String(error)}`);
    }
  });
}

async function askKind(): Promise<'svg' | 'text' | undefined> {
  const kinds = [
    { label: 'SVG picture', description: 'one page to print', as: 'svg' },
    { label: 'Text', description: 'to send or to put into a tab', as: 'text' },
  ] as const;
  return (await pick(kinds, { title: TITLE, placeholder: 'What it is to be saved as' }))?.as;
}
