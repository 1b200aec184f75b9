/** What the library tells of one file. Lists hold each value once, in the order of the text. */
export interface LibraryEntry {
  /** Empty where none is written. */
  readonly title: string;
  readonly parts: readonly string[];
  /** By name where they have one, else by notes. */
  readonly tunings: readonly string[];
  /** The same by their notes, low string first. */
  readonly notes: readonly string[];
  /** `none`, `2`, `2 on 5 4 3`. */
  readonly capos: readonly string[];
  /** Empty where none is written. */
  readonly keys: readonly string[];
  /** What sounds: the lowest and the highest note; null where there is none. */
  readonly range: LibraryRange | null;
  readonly bars: number;
}

/** Sounding notes by name and MIDI number. */
export interface LibraryRange {
  readonly low: string;
  readonly high: string;
  readonly lowMidi: number;
  readonly highMidi: number;
}
