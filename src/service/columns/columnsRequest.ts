import type { Range } from '../records';

/** What the column tools do, on all lines and rows of a system at once. */
export const COLUMN_ACTIONS = [
  'insertColumn',
  'removeColumn',
  'insertBeat',
  'removeBeat',
  'shiftLater',
  'shiftSooner',
  'insertBar',
  'removeBars',
  'duplicateBars',
  'splitSystem',
  'joinSystems',
  'fitWidth',
  'pasteBetween',
  'pasteOver',
] as const;

export type ColumnAction = (typeof COLUMN_ACTIONS)[number];

/** Whether what is shifted in time goes on into the next bar, or has to stay in its own. */
export const OVER_BAR = ['push', 'refuse'] as const;

/** How far notes are shifted: a beat of the meter, or to the next column that has a time of its own. */
export const SHIFT_STEPS = ['beat', 'column'] as const;

export interface ColumnsRequest {
  readonly action: ColumnAction;
  /** A cursor, or bars that are selected. */
  readonly range: Range;
  /** More selections, such as the lines of a block; for the two that shift notes. */
  readonly ranges?: readonly Range[];
  /** For the two that shift notes; a column when left out. */
  readonly step?: (typeof SHIFT_STEPS)[number];
  /** For beats and shifted notes; `push` when left out. */
  readonly overBar?: (typeof OVER_BAR)[number];
  /** Columns of a line at most, for `fitWidth`; 20 or more. */
  readonly width?: number;
  /** Bars as `copyBars` gives them, for the two that paste. */
  readonly text?: string;
  /** Whether `removeBars` may take notes along; without it bars with notes stay. */
  readonly withNotes?: boolean;
}
