import type { Barre } from '../../playing/hand/grips';
import type { Finger } from '../../playing/hand/handAnswer';

/** Which shapes are wanted. */
export interface ShapesRequest {
  /** A chord's name, as played where there is a full capo: `G/B`, `Dsus4`. */
  readonly chord: string;
  /** How many at most, 1 to 200; 12 where nothing is said. */
  readonly limit?: number;
  /** Highest fret, as frets are written, 0 to 36; 15 where nothing is said. */
  readonly highestFret?: number;
}

/** Shapes of one chord, best first. */
export interface ShapesAnswer {
  /** The chord in plain symbols: `CM7` is told as `Cmaj7`. */
  readonly chord: string;
  /** What it sounds as under a full capo; null without one. */
  readonly soundsAs: string | null;
  /** The chord's tones as played, from the root up: `G B D`. A foreign bass stands last. */
  readonly tones: readonly string[];
  /** The tuning in force, low string first, and the capo in words; null without one. */
  readonly tuning: string;
  readonly capo: string | null;
  /** What stands before each string's line, the highest number first: `D A D G A D`. */
  readonly labels: readonly string[];
  /** Empty where no hand finds one; `remarks` says what is missing. */
  readonly shapes: readonly ShapeAnswer[];
  /**
   * Sentences for the player: what holds for all of the shapes, or, where there is none, what is missing and what comes
   * nearest.
   */
  readonly remarks: readonly string[];
}

/** One way to hold a chord. Lists by string begin with the highest number, the one drawn at the left. */
export interface ShapeAnswer {
  /** As frets are written; 0 is open, null is not played. `insertShape` takes this list. */
  readonly frets: readonly (number | null)[];
  /** The same as players write it, apart: `x 3 2 0 1 0`. */
  readonly text: string;
  /** 0 none, 1 index … 4 little finger, T thumb; null where the string is not played, and under a slide bar. */
  readonly fingers: readonly (Finger | null)[];
  readonly barres: readonly Barre[];
  /** Where a slide player's bar lies, strings `from` ≥ `to`; null for fingers and where nothing is stopped. */
  readonly bar: { readonly fret: number; readonly from: number; readonly to: number } | null;
  /** What it sounds as a chord, named as played: `C`, `C/E`. */
  readonly name: string;
  /** Other names of the same notes. */
  readonly otherNames: readonly string[];
  /** Its notes as played by string; null where the string is not played. */
  readonly notes: readonly (string | null)[];
  /** The notes as played, each once, from the lowest up. */
  readonly tones: readonly string[];
  /** `full`: every tone of the chord; `reduced`: `leftOut` says what is missing. */
  readonly kind: 'full' | 'reduced';
  /** In words: `the fifth, G`; empty for a full shape. */
  readonly leftOut: string;
  /** Numbers of the strings that ring open. */
  readonly openStrings: readonly number[];
  /** Numbers of the strings that must be kept silent between two that sound. */
  readonly innerMuted: readonly number[];
  /** Fret of the index finger, as written; null when no string is stopped. */
  readonly position: number | null;
  /** Between the lowest and the highest stopped fret, along the neck. */
  readonly millimetres: number;
  /** Whether the root is the lowest note; `bass` is that note. */
  readonly rootInBass: boolean;
  readonly bass: string;
  /** The lower, the better it ranks; only to be compared within one answer. */
  readonly cost: number;
  /** A few words for a list: `full, open strings 3 and 1, position 1`. */
  readonly short: string;
  /** Sentences for the player: fingers, open and muted strings, what is left out, the bass. */
  readonly words: string;
  /** A picture, an SVG document of its own, and what it shows in words. */
  readonly svg: string;
  readonly alt: string;
  /** A system of one column with a `chords` row, to copy or insert; lines end with LF. */
  readonly tab: string;
}

/** Which shape is to be written. */
export interface InsertShapeRequest {
  /** As in `ShapeAnswer.frets`: highest string number first, null is not played. */
  readonly frets: readonly (number | null)[];
  /** The chord's name, for the row of a system that is written where none stands. */
  readonly chord?: string;
}

/** What became of a shape: a chord by its name, or a shape of the instrument's usual tuning by its frets. */
export type ShapeKinRequest = { readonly chord: string } | { readonly frets: readonly (number | null)[] };

/** The everyday shape of the usual tuning beside the nearest one here. */
export interface ShapeKinAnswer {
  readonly chord: string;
  /** What it sounds as under a full capo; null without one. */
  readonly soundsAs: string | null;
  /** The instrument's usual tuning in words, and the one in force: `standard (E2 A2 D3 G3 B3 E4)`. */
  readonly usualTuning: string;
  readonly tuning: string;
  /** Null where no hand finds one; `remarks` says so. */
  readonly usual: ShapeAnswer | null;
  readonly here: ShapeAnswer | null;
  /** What each string must do, the highest number first; empty where one of the two is missing. */
  readonly moves: readonly StringMove[];
  /** In words: `string 5 +2, string 3 open, string 1 mute`, or `nothing changes`. */
  readonly words: string;
  /** How many strings do something else, and how far fingers go for it, millimetres along the neck. */
  readonly stringsChanged: number;
  readonly millimetres: number;
  readonly remarks: readonly string[];
}

export interface StringMove {
  /** Player's number. */
  readonly string: number;
  /** Fret in the usual tuning and here; null is not played, undefined where the tuning has no such string. */
  readonly from: number | null | undefined;
  readonly to: number | null | undefined;
  readonly changed: boolean;
  /** `+2`, `−1`, `mute`, `open`, `fret 2`, `stays`. */
  readonly words: string;
}

/** The same for every chord of a piece. */
export interface SongShapesAnswer {
  /** `row`: from the names over the tab; `tab`: what is struck together, where no name is written. */
  readonly from: 'row' | 'tab';
  /** In the order in which they come, each once for a tuning. */
  readonly chords: readonly SongChord[];
  readonly remarks: readonly string[];
}

export interface SongChord {
  readonly chord: string;
  /** Named where the document has several parts. */
  readonly part: string | null;
  /** Bars in which it stands. */
  readonly bars: readonly number[];
  /** Where its name, or its first note, stands first: line from 1, character from 1. */
  readonly line: number;
  readonly column: number;
  /** Null where the name cannot be read; `problem` says why. */
  readonly kin: ShapeKinAnswer | null;
  readonly problem: string | null;
}
