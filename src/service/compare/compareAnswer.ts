import type { Range } from '../../notation/tabDocument';

/**
 * What became of a note from one version to the other. `elsewhere`: the same sound at the same time at another place of
 * the neck; `retimed`: the same pitch at another time, in its bar or in a bar beside it; `repitched`: another pitch at
 * the same time; `played`: the same fret at the same time, played another way (hammered, bent, as a ghost note …).
 */
export type NoteChange = 'added' | 'lost' | 'retimed' | 'repitched' | 'elsewhere' | 'played';

/**
 * How many notes became what. `before` = same + elsewhere + retimed + repitched + played + lost, and `after` = same +
 * elsewhere + retimed + repitched + played + added.
 */
export interface CompareCounts extends Readonly<Record<NoteChange, number>> {
  readonly before: number;
  readonly after: number;
  readonly same: number;
}

/** A note of one version. */
export interface ComparedNote {
  /** The bar's number in its version. */
  readonly bar: number;
  /** As people count: `beat 2 &`. */
  readonly beat: string;
  /** Player's number. */
  readonly string: number;
  /** `fret 2`, `open`, `muted`. */
  readonly stop: string;
  /** Sounding; empty for a muted stroke. */
  readonly name: string;
  /** Sounding MIDI number, decimals for cents; null for a muted stroke. */
  readonly midi: number | null;
  /** Of its version's text. */
  readonly range: Range;
}

export interface ComparedChange {
  readonly kind: NoteChange;
  /** Left out for a note that was added. */
  readonly before?: ComparedNote;
  /** Left out for a note that was lost. */
  readonly after?: ComparedNote;
  /** `D4 on string 1, open, beat 1`, and what it became. */
  readonly words: string;
}

/** The changes of one bar: a bar that both versions have, or one that only one of them has. */
export interface ComparedBar {
  readonly part: string | null;
  readonly section: string | null;
  /** The bar's number in each version; null where that version does not have it. */
  readonly before: number | null;
  readonly after: number | null;
  /** `Bar 4, bar 5 before`. */
  readonly title: string;
  readonly changes: readonly ComparedChange[];
}

/** A field that says another thing at the beginning of a part. */
export interface ComparedField {
  readonly part: string | null;
  readonly field: string;
  readonly before: string;
  readonly after: string;
}

/** What sets two versions of a piece apart. Both empty lists: nothing that can be heard or is played otherwise. */
export interface CompareAnswer {
  readonly counts: CompareCounts;
  /** In the order of the later version; bars without a change are left out. */
  readonly bars: readonly ComparedBar[];
  readonly fields: readonly ComparedField[];
  /** Short sentences: the summary first. */
  readonly remarks: readonly string[];
}
