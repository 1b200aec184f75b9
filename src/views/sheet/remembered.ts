import { isCount, isList, isRecord, isText } from '../messages/message';

/** What the sheet remembers: what the reader chose, and where on the page the reader is. */
export interface Remembered {
  /** The tuning to come from; empty for the usual choice. */
  readonly from: string;
  /** Sections that are folded away. */
  readonly folded: readonly string[];
  /** Pixels down the page. */
  readonly scroll: number;
}

/** Checks by ear are for those who look for them. */
export const AT_FIRST: Remembered = { from: '', folded: ['Checks by ear'], scroll: 0 };

export const isRemembered = isRecord<Remembered>({
  from: isText,
  folded: isList(isText),
  scroll: isCount,
});
