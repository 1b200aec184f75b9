import type { Barre } from '../../playing/hand/grips';
import type { Finger } from '../../playing/hand/handAnswer';

/**
 * How a hand holds what is struck at one moment and what rings there: the fingers of least effort under the hand's
 * table, for these notes alone. With `fretting: slide` where the bar lies.
 */
export interface GripAnswer {
  /** Sentences for the player. */
  readonly words: string;
  /** What the words rest on, as a sentence without its stop; empty where no finger is told. */
  readonly basis: string;
  readonly slide: boolean;
  /** Every string, the highest number first. */
  readonly strings: readonly GripString[];
  /** Fret of the index finger, counted as frets are written; null when no finger is needed or none can hold it. */
  readonly position: number | null;
  readonly barres: readonly Barre[];
  /** Between the lowest and the highest stopped fret, along the neck; null when no hand holds it. */
  readonly millimetres: number | null;
  /** Strings `from` ≥ `to`, fret as written. */
  readonly bar: { readonly fret: number; readonly from: number; readonly to: number } | null;
  /** Strings that ring from before and cannot ring on. */
  readonly letGo: readonly number[];
  /** By what rules what is struck cannot be held, with the figures; empty when it can. */
  readonly refused: readonly string[];
  /** A picture of the grip, an SVG document of its own, and what it shows in words. */
  readonly svg: string;
  readonly alt: string;
}

export interface GripString {
  /** Player's number. */
  readonly string: number;
  /** `touched` is a natural harmonic, `tapped` a note of the picking hand, `unplayable` a fret that is not there. */
  readonly state: 'stopped' | 'open' | 'muted' | 'touched' | 'tapped' | 'unplayable' | 'silent';
  /** As written, 0 for an open string; null for a silent or muted one. */
  readonly fret: number | null;
  /** 1 index … 4 little finger, T thumb, 0 none; null where no finger can be told. */
  readonly finger: Finger | null;
  /** Whether it is struck at this moment; else it rings from before or is silent. */
  readonly struck: boolean;
}
