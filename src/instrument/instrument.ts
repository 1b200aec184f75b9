/** An instrument of the trade, as data. Strings are listed low string first: index 0 is the highest-numbered string. */
export interface Instrument {
  /** The name a person writes in `instrument:`, such as `12-string guitar`. */
  readonly name: string;
  readonly aliases: readonly string[];
  /** The value of its usual tuning, as a person would write it, with octaves: `E2 A2 D3 G3 B3 E4`. */
  readonly usualTuning: string;
  /** How many frets the neck has. */
  readonly frets: number;
  /** Open string length in millimetres. */
  readonly scaleLength: number;
  /** A usual set of strings in the order of the tuning, in the notation of `gauges:`; undefined where none is usual. */
  readonly usualGauges: string | undefined;
  /** For each string, low string first, the fret at which it begins: 5 for a banjo's fifth string, else 0. */
  readonly firstFrets: readonly number[];
  /**
   * For each course, low string first, the half steps from the written note to its usual partner (12 for an octave
   * course, 0 for a unison course); undefined where the string is single.
   */
  readonly partners: readonly (number | undefined)[];
  /** Whether it is usually played with one straight bar (lap steel). */
  readonly slide: boolean;
}
