import type { Range } from '../../notation/tabDocument';

/** What counts as the same sound. */
export interface SoundWish {
  /**
   * `tune` (taken where nothing is said): the highest note that begins at each moment; `chords`: everything that begins
   * at each moment.
   */
  readonly by?: 'tune' | 'chords';
  /** Whether the times between the moments must be the same too. */
  readonly rhythm?: boolean;
  /** For a tune: whether lower notes may begin between its notes, as in an accompaniment. */
  readonly over?: boolean;
}

/** A tune or a row of chords to look for: the moments at which something begins, in time order. */
export interface SoundPattern {
  /** Sounding MIDI numbers of each moment, lowest first. */
  readonly moments: readonly (readonly number[])[];
  /** Quarter notes from the first moment, for each; undefined where no rhythm is known. */
  readonly onsets: readonly { readonly n: number; readonly d: number }[] | undefined;
  /** Whether something begins together, so that it can be looked for as chords. */
  readonly together: boolean;
  /** `D4 E4 F#4`: the tune as it sounds, for the title of what is found. */
  readonly name: string;
  /** Where its notes stand, as `moments`; empty for notes that were typed. */
  readonly places: readonly (readonly Range[])[];
}

/** A place that sounds alike. */
export interface FoundPassage {
  readonly part: string | null;
  readonly section: string | null;
  readonly firstBar: number;
  readonly lastBar: number;
  /** By name where it has one, else by notes; with the capo: `DADGAD, capo 2`. */
  readonly tuning: string;
  /** How far it sounds above the pattern. */
  readonly halfSteps: number;
  /** Its notes, in time order. */
  readonly ranges: readonly Range[];
  /** `Verse, bars 3–4 · DADGAD, capo 2 · 5 half steps up`. */
  readonly words: string;
}
