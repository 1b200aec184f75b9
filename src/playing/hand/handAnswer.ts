import type { Answer } from '../passage';

/** 0 for an open string, a natural harmonic and a muted stroke; 1 index … 4 little finger; T thumb. */
export type Finger = 0 | 1 | 2 | 3 | 4 | 'T';

/** A fingering of a passage. `cost` is the sum under the table of constants, without unit. */
export interface HandAnswer extends Answer {
  /** By note id, for each note that is placed. */
  readonly fingers: ReadonlyMap<number, Finger>;
  /** The fret of the index finger when the note begins, counted as frets are written; by note id. */
  readonly positions: ReadonlyMap<number, number>;
  readonly measures: HandMeasures;
}

export interface HandMeasures {
  /** Highest written fret that is stopped; 0 when all is open. */
  readonly highestFret: number;
  /** The widest span of the fingers along the neck, and a note at that moment. */
  readonly widestStretch: { readonly millimetres: number; readonly id: number } | undefined;
  /** The longest way of the hand along the neck between two moments, and the note it leads to. */
  readonly longestTravel: { readonly millimetres: number; readonly id: number } | undefined;
  /** How many notes sound on open strings. */
  readonly openStrings: number;
  /** The dearest moment: its grip and the move to it, and in words what is hard about it. */
  readonly hardest: { readonly cost: number; readonly id: number; readonly why: string } | undefined;
  /** Notes that should ring on and are let go. */
  readonly cutNotes: number;
}
