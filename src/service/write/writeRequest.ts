/** What is done where notes already stand in the bars that are to be written into. Left out, it is an error that says so. */
export type InTheWay = 'new bars';

/** Notes to write at a place by their names. */
export interface WriteNotesRequest {
  /**
   * Names with octave (`F#4`), names without (`F#`: the nearest to the note before), or degrees of the key (`b3`,
   * against the major scale of its tonic), with spaces or commas between. `D3+F#3+A3` sound together; `-` lets ring on
   * and `.` is silence for one value; `:q` behind a note is its own length (`w h q e s`, with `.` dotted, `t` a
   * triplet); `|` goes on with the next bar; `>5` and `<5` are the next one above and below. Sounding pitch is meant,
   * also under a capo.
   */
  readonly text: string;
  /** The length of what has none of its own: `eighth` (taken where nothing is said), `dotted quarter`, `eighth triplet`. */
  readonly value?: string;
  /** The key that degrees are counted in, as played; the one in force where nothing is said. */
  readonly key?: string;
  /** `new bars`: they are put in behind the bar at the place. */
  readonly inTheWay?: InTheWay;
}

export type Direction = 'up' | 'down' | 'up and down';

/** A scale or an arpeggio to lay down as an exercise; one of `scale` and `chord`. Both are named as played, under a capo too. */
export interface WriteExerciseRequest {
  /** `D dorian`, `A minor pentatonic`; without a root (`dorian`) that of the key in force. */
  readonly scale?: string;
  /** The chord of an arpeggio: `Am7`. */
  readonly chord?: string;
  /** The fret of the index finger as frets are written, or `open`: the first four frets and open strings. */
  readonly inPosition?: number | 'open';
  /** How many octaves, 1 to 4. Left out: as many as the position holds, 1 without a position. */
  readonly octaves?: number;
  /** `up and down` where nothing is said. */
  readonly direction?: Direction;
  /** The length of each note; `eighth` where nothing is said. */
  readonly value?: string;
  /** Whether a row names the fingers; true where nothing is said. */
  readonly fingers?: boolean;
}
