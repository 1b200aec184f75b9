import type { Range } from '../../notation/tabDocument';
import type { Barre } from '../../playing/hand/grips';
import type { Finger } from '../../playing/hand/handAnswer';

/** How shapes are chosen for the names of chords. */
export interface ShapeWishes {
  /** `full` (taken where nothing is said): as many strings as sound well; `small`: three or four strings. */
  readonly style?: 'full' | 'small';
  /** Highest fret, as frets are written; 12 where nothing is said. */
  readonly highestFret?: number;
  /** True: open strings wherever they fit; false: every string is stopped. Left out, what moves the hand least. */
  readonly open?: boolean;
}

/** Shapes written under names of chords. */
export interface FillRequest extends ShapeWishes {
  /** Any range; systems that it touches. Undefined is the whole file. */
  readonly range: Range | undefined;
  /** `once` (taken where nothing is said): where the name stands; `beats`: on each beat from there on, too. */
  readonly strum?: 'once' | 'beats';
}

/** The same chords for a second player, away from what the first one sounds. */
export interface SecondGuitarRequest extends FillRequest {
  /** The new part's name. */
  readonly name: string;
  /** A tuning by name or typed; the one in force where it is left out. */
  readonly tuning?: string;
  /** A value of `capo:`; the one in force where it is left out. Chords are named as played under it. */
  readonly capo?: string;
}

export interface ChartRequest extends ShapeWishes {
  /** Undefined is the whole file. */
  readonly range: Range | undefined;
}

/** Every chord of a passage with its shape, each shape once, in the order in which they come. */
export interface ChordChart {
  /** The song's; null where none is written. */
  readonly title: string | null;
  /** What the shapes are for: `DADGAD, capo at fret 2`. */
  readonly tuning: string;
  readonly chords: readonly ChartChord[];
  /** The chart as lines of plain text. */
  readonly text: string;
  /** One sheet with a picture of each shape, an SVG document of its own, and what it shows in words. */
  readonly svg: string;
  readonly alt: string;
  /** Short sentences for the user: the summary first. */
  readonly remarks: readonly string[];
}

export interface ChartChord {
  /** As written, so as played under a full capo. */
  readonly name: string;
  /** What it sounds as under a full capo; null without one. */
  readonly sounds: string | null;
  /** Named where the document has several parts. */
  readonly part: string | null;
  /** The notes of the strings it is played on, low-placed string first: `D2 A2 D3 G3 A3 D4`. */
  readonly strings: string;
  /** The bars in which it begins, each once. */
  readonly bars: readonly number[];
  /** Null where there is none; `reason` says why. */
  readonly shape: ChartShape | null;
  readonly reason: string;
}

export interface ChartShape {
  /** As written, low-placed string first; null for a string that does not sound. */
  readonly frets: readonly (number | null)[];
  /** `full`: every tone of the name; `reduced`: the fifth is left out. */
  readonly kind: 'full' | 'reduced';
  /** In the order of `frets`; 0 for an open string and one that does not sound. */
  readonly fingers: readonly Finger[];
  readonly barres: readonly Barre[];
  /** Fret of the index finger, as frets are written. */
  readonly position: number;
  /** Sentences for the player. */
  readonly words: string;
}
