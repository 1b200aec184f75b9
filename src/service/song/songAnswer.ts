import type { Range } from '../../notation/tabDocument';
import type { ShapeAnswer } from '../shapes/shapesAnswer';

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
  /** What the shapes are for: `DADGAD, capo at fret 2`; several where the fields change. */
  readonly tunings: readonly string[];
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
  /** The one of `tunings` that it is played in. */
  readonly tuning: string;
  /** The bars in which it begins, each once. */
  readonly bars: readonly number[];
  /** Null where there is none; `reason` says why. */
  readonly shape: ShapeAnswer | null;
  readonly reason: string;
}
