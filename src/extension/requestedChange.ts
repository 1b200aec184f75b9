import type { Range } from 'vscode-languageclient';
import type { ChangeAnswer } from '../server/requests';

/** How many ways a preview asks for: the best and two others. */
export const WAYS_IN_PREVIEW = 3;

/** A change that the user asked for in full: how it is named, and how the server is asked for it. */
export interface RequestedChange {
  /** What it would do: `Convert to DADGAD, keeping the sound`. */
  readonly asked: string;
  /** What it did: `Converted to DADGAD, keeping the sound`. */
  readonly done: string;
  /** The text after it, as it ends the title of the preview: `in DADGAD`. */
  readonly after: string;
  /**
   * Asks the server, for a range of the document as it is now; without a range for the whole file.
   * @param ways how many ways of doing it are wanted, 1 to `WAYS_IN_PREVIEW`; there may be fewer
   */
  readonly ask: (range: Range | undefined, ways: number) => Promise<ChangeAnswer>;
}
