import { isRecord, isText } from '../messages/message';
import { isShapesTab, type ShapesTab } from '../messages/shapesMessages';

/** What the page remembers: what is looked at, for which chord, and which shape is chosen. */
export interface Remembered {
  readonly tab: ShapesTab;
  readonly chord: string;
  /** A shape's `text`; empty for none. */
  readonly shape: string;
}

export const AT_FIRST: Remembered = { tab: 'shapes', chord: '', shape: '' };

export const isRemembered = isRecord<Remembered>({ tab: isShapesTab, chord: isText, shape: isText });
