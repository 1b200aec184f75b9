/** How a text with note names in place of frets is written. */
export interface NoteNamesRequest {
  /** Whether names have their octave: `F#4` in place of `F#`. */
  readonly octaves?: boolean;
}

/** A text with note names in place of frets, line by line as the tab. */
export interface NoteNamesAnswer {
  readonly text: string;
  /** The lines whose columns moved, in order. */
  readonly lines: readonly LineStops[];
}

/** Which character of a line stands where in the other text. */
export interface LineStops {
  readonly line: number;
  /**
   * Pairs of UTF-16 offsets, one after the other: a place in the tab, the same place among the names. Both grow. Between
   * two pairs both go on character by character, until the next pair is reached.
   */
  readonly stops: readonly number[];
}
