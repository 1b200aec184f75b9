import type { Range } from '../../notation/tabDocument';

/** The `chords` row, written from what sounds. */
export interface WriteChordsRequest {
  /** Whole systems are written: those that the range touches; undefined is the whole document. */
  readonly range: Range | undefined;
  /** Whether names that disagree with what sounds are replaced; else they stay, and are told. */
  readonly replace?: boolean;
}
