import type { Range } from '../records';

/** What the column tools do, on all lines and rows of a system at once. */
export const COLUMN_ACTIONS = [
  'insertColumn',
  'removeColumn',
  'insertBeat',
  'removeBeat',
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

export interface ColumnsRequest {
  readonly action: ColumnAction;
  /** A cursor, or bars that are selected. */
  readonly range: Range;
  /** Columns of a line at most, for `fitWidth`; 20 or more. */
  readonly width?: number;
  /** Bars as `copyBars` gives them, for the two that paste. */
  readonly text?: string;
  /** Whether `removeBars` may take notes along; without it bars with notes stay. */
  readonly withNotes?: boolean;
}
