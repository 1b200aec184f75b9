import type { RowName } from '../../notation/rowNames';
import type { Place } from '../../notation/tabDocument';

/** Rows that an empty system may have, in the order in which they stand above its strings. */
export const LAYOUT_ROWS = [
  'count',
  'chords',
  'words',
  'picking',
  'fingers',
] as const satisfies readonly RowName[];

export type LayoutRow = (typeof LAYOUT_ROWS)[number];

/** How an empty system is laid out. What is left out is taken as a plain system has it. */
export interface LayoutRequest {
  /** 1 to 16; 4 where nothing is said. */
  readonly bars?: number;
  /** Columns a beat: 1, 2, 3, 4, 6, 8, 9, 12, 16 or 24; room for sixteenths where nothing is said. */
  readonly columns?: number;
  readonly rows?: readonly LayoutRow[];
}

/** A tab to begin with. */
export interface NewTabRequest extends LayoutRequest {
  /** By name; a guitar where nothing is said. */
  readonly instrument?: string;
  /** By name or typed; the instrument's usual one where nothing is said. */
  readonly tuning?: string;
  /** `4/4` where nothing is said. */
  readonly meter?: string;
}

export interface NewTabAnswer {
  readonly text: string;
  /** The first cell of string 1. */
  readonly cursor: Place;
}

/** An instrument on offer. */
export interface InstrumentChoice {
  readonly name: string;
  /** Its usual tuning, low string first. */
  readonly notes: string;
}

/** A tuning to begin with. */
export interface StartingTuning {
  readonly value: string;
  /** Low string first. */
  readonly notes: string;
  /** From the instrument's usual tuning: `string 6 down 2`, or `as it is`. */
  readonly steps: string;
  /** What the open strings make; empty where it has no everyday name. */
  readonly chord: string;
  /** Something to know before tuning so; empty where there is nothing. */
  readonly remark: string;
}
