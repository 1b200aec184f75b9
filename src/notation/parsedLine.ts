import type { PitchName } from '../music/noteName';
import type { FieldName } from './fieldNames';
import type { RowName } from './rowNames';

/**
 * One line of a document as the grammar reads it: a pure function of the line's text. All offsets are UTF-16
 * offsets in that text, all columns count from the line's first `|` (column 0) as a reader sees them.
 */
export type ParsedLine = BlankLine | CommentLine | SectionLine | FieldLine | StringLine | RowLine | ProseLine;

interface LineBase {
  readonly text: string;
}

export interface BlankLine extends LineBase {
  readonly kind: 'blank';
}

export interface CommentLine extends LineBase {
  readonly kind: 'comment';
}

/** `[Chorus] x2` */
export interface SectionLine extends LineBase {
  readonly kind: 'section';
  readonly name: string;
  readonly nameStart: number;
  /** How many times it is played in all, when the remark says so. */
  readonly times: number | undefined;
}

/** `capo: 2` */
export interface FieldLine extends LineBase {
  readonly kind: 'field';
  readonly field: FieldName;
  /** Where the name stands. */
  readonly nameStart: number;
  readonly nameEnd: number;
  /** The value without the spaces about it. */
  readonly value: string;
  readonly valueStart: number;
}

/** Text for the reader; `nearMiss` says that it looks like something else that was nearly written. */
export interface ProseLine extends LineBase {
  readonly kind: 'prose';
  readonly nearMiss: NearMiss | undefined;
}

export type NearMiss =
  /** `tunning: DADGAD` */
  | { readonly kind: 'field'; readonly field: FieldName; readonly start: number; readonly end: number }
  /** `scale: D major` */
  | { readonly kind: 'scale'; readonly start: number; readonly end: number }
  /** `|--0--2--|` or `E:--0--2--|` */
  | { readonly kind: 'string-line'; readonly start: number; readonly end: number }
  /** `1 & 2 & 3 & 4 &` or `G     D7`, as stand above the strings without a row's word. */
  | { readonly kind: 'row'; readonly row: 'count' | 'chords'; readonly start: number; readonly end: number };

/** `A2 |0---2---| remark` */
export interface StringLine extends LineBase {
  readonly kind: 'string';
  readonly label: Label;
  /** Offset of the first `|`, column 0. */
  readonly bodyStart: number;
  /** The run's pieces in order, `|` at column 0 included. */
  readonly tokens: readonly Token[];
  /** Columns from the first `|` to the end of the run. */
  readonly width: number;
  /** Offset past the run. */
  readonly bodyEnd: number;
  readonly remark: Remark | undefined;
  /** Look-alike dashes and bars (`–`, `│`) that were read as `-` and `|`. */
  readonly lookAlikes: readonly TextSpan[];
  readonly tabs: readonly TextSpan[];
}

export interface TextSpan {
  readonly start: number;
  readonly end: number;
}

export interface Remark extends TextSpan {
  readonly text: string;
  /** `x3`: times in all. */
  readonly times: number | undefined;
}

export interface Label extends TextSpan {
  /** As written. */
  readonly text: string;
  /** A string's number 1–14, when the label is one. */
  readonly number: number | undefined;
  /** The note, or the two of a course. */
  readonly notes: readonly LabelNote[];
}

export interface LabelNote extends PitchName {
  readonly octave: number | undefined;
}

/** A piece of a string line's run. `text` has look-alikes replaced. */
export interface Token extends TextSpan {
  readonly kind: TokenKind;
  readonly text: string;
  readonly column: number;
  /** Columns it takes. */
  readonly width: number;
}

/**
 * `bar` one bar sign · `dash` a run of `-` · `stop` `.` · `number` a fret · `mute` `x` ·
 * `open`/`close` brackets of a ghost note · `harmonic` `<12>` ·
 * `join` one of h p t r · `trill` `tr` · `slide` a run of `/` or `\` · `bend` `b`, `b9`, `b1/2`, `b7.5` ·
 * `pre-bend` `pb9` · `vibrato` a run of `~` · `junk` anything else up to the next sign
 */
export type TokenKind =
  | 'bar'
  | 'dash'
  | 'stop'
  | 'number'
  | 'mute'
  | 'open'
  | 'close'
  | 'harmonic'
  | 'join'
  | 'trill'
  | 'slide'
  | 'bend'
  | 'pre-bend'
  | 'vibrato'
  | 'junk';

/** `count |1 & 2 & |` */
export interface RowLine extends LineBase {
  readonly kind: 'row';
  readonly row: RowName;
  /** The word as written. */
  readonly word: string;
  readonly wordStart: number;
  readonly wordEnd: number;
  /** A row's word that was nearly written, for a text row such as `cuont`. */
  readonly nearRow: Exclude<RowName, 'text'> | undefined;
  /** Offset of the first `|`, column 0. */
  readonly bodyStart: number;
  /** Runs without space or bar sign, in order. */
  readonly marks: readonly RowMark[];
  readonly bars: readonly RowBar[];
  /** Columns from the first `|` to the last character that is no space. */
  readonly width: number;
}

export interface RowMark extends TextSpan {
  readonly text: string;
  readonly column: number;
  readonly width: number;
}

export interface RowBar {
  readonly text: string;
  readonly column: number;
  readonly start: number;
  readonly width: number;
}
