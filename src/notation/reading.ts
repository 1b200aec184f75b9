import type { Fraction } from '../music/fraction';
import type { NoteName } from '../music/noteName';
import type { RowName } from './rowNames';

/**
 * What a system means: every position is relative to the system (`line` counts from its first line, times are
 * quarter notes from its start), so that it stays true while the system moves in its document.
 */
export interface SystemReading {
  /** The string lines, top to bottom. */
  readonly strings: readonly StringReading[];
  readonly rows: readonly RowReading[];
  readonly bars: readonly BarReading[];
  /** In time order; notes that begin together by string number, highest number (lowest-placed string) first. */
  readonly notes: readonly NoteReading[];
  /** Where `.` ends a ringing note. */
  readonly stops: readonly StopReading[];
  /** Whether a `count` row pins the times or they were worked out from the columns. */
  readonly timing: 'counted' | 'inferred';
  /** The time of each column (quarter notes from the system's start); the column of a bar sign has the time of the bar it opens. */
  readonly columnTimes: readonly Fraction[];
  /** The length of all bars together. */
  readonly length: Fraction;
  /** Passages played more than once, from `|:` … `:|` and `x3`. */
  readonly repeats: readonly Repeat[];
  readonly problems: readonly Problem[];
}

export interface StringReading {
  readonly line: number;
  /** The number players give the string. */
  readonly number: number;
  /** Its index in `header.tuning.strings`; −1 when the tuning has no such string. */
  readonly index: number;
}

export interface RowReading {
  readonly row: RowName;
  readonly line: number;
  readonly word: string;
  readonly marks: readonly PlacedMark[];
}

/** A mark of a row at its time. */
export interface PlacedMark {
  readonly text: string;
  readonly column: number;
  readonly start: number;
  readonly end: number;
  readonly onset: Fraction;
}

export interface BarReading {
  /** First column of the bar that carries time. */
  readonly startColumn: number;
  /** Column of the bar sign that ends it, or the width of the system. */
  readonly endColumn: number;
  readonly onset: Fraction;
  readonly length: Fraction;
  /** A pickup: shorter than the meter and, at the start of a part, bar 0. */
  readonly pickup: boolean;
  /** Bar signs as written at its two ends; empty where none stands. */
  readonly openSign: string;
  readonly closeSign: string;
}

export interface Repeat {
  readonly firstBar: number;
  readonly lastBar: number;
  /** Times played in all. */
  readonly times: number;
}

export interface StopReading {
  readonly string: number;
  readonly line: number;
  readonly column: number;
  readonly start: number;
  readonly end: number;
  readonly onset: Fraction;
}

/** `natural-harmonic` `<12>`, `artificial-harmonic` `5<17>`. */
export type NoteKind = 'fretted' | 'muted' | 'natural-harmonic' | 'artificial-harmonic';

export interface NoteReading {
  readonly kind: NoteKind;
  /** The number players give the string. */
  readonly string: number;
  readonly line: number;
  /** Column at which it begins. */
  readonly column: number;
  /** UTF-16 offsets in its line: the note with its brackets, without signs that join it to others. */
  readonly start: number;
  readonly end: number;
  /** UTF-16 offsets of its first number, or of the `x`. */
  readonly numberStart: number;
  readonly numberEnd: number;
  /** The number written: the fret stopped, or for a natural harmonic 0. Undefined for `x`. */
  readonly fret: number | undefined;
  /** Where a harmonic is touched, counted as the text counts; may have a fraction (`<3.2>`). */
  readonly touched: number | undefined;
  readonly ghost: boolean;
  /** Index in `bars`. */
  readonly bar: number;
  readonly onset: Fraction;
  /** When something on its string ends it; undefined when it rings past the system's end. */
  readonly ends: Fraction | undefined;
  /** What sounds: one pitch, or two on a course. Empty for `x` and where nothing can sound (a problem says why). */
  readonly pitches: readonly SoundingPitch[];
  readonly techniques: readonly Technique[];
  /** Index in `notes` of the note that a hammer-on, pull-off or slide brings here; undefined when it is struck. */
  readonly joinedFrom: number | undefined;
}

export interface SoundingPitch {
  /** Sounding MIDI number, with decimals for cents. */
  readonly midi: number;
  /** Sounding name, spelled by key and tuning. */
  readonly name: NoteName;
}

export type TechniqueKind =
  | 'hammer-on'
  | 'pull-off'
  | 'tap'
  | 'trill'
  | 'slide'
  | 'slide-from-nowhere'
  | 'slide-to-nowhere'
  | 'bend'
  | 'pre-bend'
  | 'release'
  | 'vibrato';

/**
 * A technique. Hammer-ons, pull-offs and taps belong to the note they bring; a slide belongs to the note it leaves;
 * bends, releases, trills and vibrato to the note that is stopped.
 */
export interface Technique {
  readonly kind: TechniqueKind;
  /** As written: `h`, `/`, `b`, `pb`, `r`, `tr`, `~` … */
  readonly sign: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** The sounding MIDI number it ends on, where it has one. */
  readonly to: number | undefined;
  /** The fret written for its end (may have a fraction), where one is. */
  readonly toFret: number | undefined;
  /** When it happens, where that is not the note's onset (a release, a bend reached later). */
  readonly onset: Fraction | undefined;
}

/** Something in a system's text that does not fit; a check turns each kind into a diagnostic. */
export interface Problem {
  readonly kind: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** Whatever the message needs: numbers, names, alternatives. */
  readonly facts: Readonly<Record<string, string | number | readonly string[] | readonly number[]>>;
}
