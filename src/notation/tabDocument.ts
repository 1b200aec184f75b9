import type { Fraction } from '../music/fraction';
import type { Header } from './header';
import type { FieldLine, ParsedLine } from './parsedLine';
import type { NoteReading, SystemReading } from './reading';

/** Lines count from 0; characters are UTF-16 offsets in the line. */
export interface Place {
  readonly line: number;
  readonly character: number;
}

export interface Range {
  readonly start: Place;
  readonly end: Place;
}

/** A replacement of a stretch of text. */
export interface TextEdit {
  readonly range: Range;
  readonly newText: string;
}

/** A run of string lines and rows, read together. */
export interface System {
  /** Line of the document it begins on. */
  readonly firstLine: number;
  /** String lines, rows and the comments between them. */
  readonly lines: readonly ParsedLine[];
  /** The fields in force. */
  readonly header: Header;
  /** The heading above it, for all parts below that heading. */
  readonly section: Section | undefined;
  readonly firstInPart: boolean;
  readonly firstInSection: boolean;
  /** Computed on first use and remembered. */
  readonly reading: SystemReading;
  /** Grows whenever what rings into the system may have changed while the system itself stayed. */
  readonly ringVersion: number;
}

export interface Section {
  readonly line: number;
  readonly name: string;
  readonly times: number | undefined;
}

/** Fields with no system and no `part` between them, read together. */
export interface FieldGroup {
  readonly fields: readonly PlacedField[];
  /** What held in this part before the group. */
  readonly before: Header;
  /** What holds after it. */
  readonly after: Header;
  /** What the values could not be read as, or were read as with a remark. */
  readonly problems: readonly FieldProblem[];
}

export interface PlacedField {
  readonly lineIndex: number;
  readonly line: FieldLine;
}

export interface FieldProblem {
  /** `malformed` with the reader's notice, `notice` for a value understood with a remark, `repeated` for a field met twice. */
  readonly kind: 'malformed' | 'notice' | 'repeated';
  readonly field: PlacedField;
  /** The reader's own kind (`one-note`, `string-count` …), or the field's name. */
  readonly reason: string;
  readonly message: string;
  /** Offsets in the line. */
  readonly start: number;
  readonly end: number;
  /** Whole values that would do. */
  readonly suggestions: readonly string[];
}

/** Where a system stands in its part. */
export interface PartPlace {
  readonly part: string | undefined;
  /** Number of the system's first bar: 0 for a pickup at the start of a part, else from 1. */
  readonly firstBar: number;
  /** Quarter notes from the part's start. */
  readonly onset: Fraction;
}

/** A note that still rings when a system begins. */
export interface RingingNote {
  readonly system: System;
  readonly note: NoteReading;
}

/** A document: the text is the only truth, everything else is worked out from it. */
export interface TabDocument {
  readonly lineCount: number;
  line(index: number): ParsedLine;
  /** The whole text, with the line ends it came with. */
  text(): string;
  readonly systems: readonly System[];
  systemAt(line: number): System | undefined;
  /** The fields in force at a line, that line's own group included. */
  headerAt(line: number): Header;
  readonly sections: readonly Section[];
  /** The same list as long as no edit has changed how the lines belong together. */
  readonly fieldGroups: readonly FieldGroup[];
  /**
   * Lines outside all systems that were nearly something else (`ParsedLine.nearMiss`, `nearRow`), in order; the same
   * list as long as none of them has changed.
   */
  readonly nearMisses: readonly number[];
  /** The parts in the order they begin; one entry with name undefined where no `part` is written. */
  readonly parts: readonly (string | undefined)[];
  placeOf(system: System): PartPlace;
  /** What rings into a system from those before it in its part and section. */
  ringingInto(system: System): readonly RingingNote[];
  /** When a note ends, in quarter notes from its part's start: the next event on its string, a `.`, or the end of its section. */
  endOf(system: System, note: NoteReading): Fraction;
}
