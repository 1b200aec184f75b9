import type { Capo } from '../../instrument/capo';
import type { Instrument } from '../../instrument/instrument';
import type { Tuning } from '../../instrument/tuning';
import type { HandAnswer } from '../hand/handAnswer';
import type { HandOptions } from '../hand/options';
import type { PassageNote } from '../passage';
import type { Target } from '../target';

/** What is asked: in which tuning is this passage easiest? */
export interface SuitRequest {
  /** The passage at its own pitches. */
  readonly notes: readonly PassageNote[];
  /** The tuning it stands in; retunings are counted from it. */
  readonly start: Tuning;
  /** Whose named tunings are ranked, and whose usual tuning the strings are made for. */
  readonly instrument: Instrument;
  /** The neck, the same for every tuning. */
  readonly target: Omit<Target, 'fingerboard'> & { readonly frets: number; readonly capo: Capo | undefined };
  /** The hand. Of its `alternatives` one is worked out. */
  readonly options: HandOptions;
  /** How far each string may be retuned from `start`, half steps up or down, 0 to 3; `USUAL_SUIT` says 2. */
  readonly within: number;
  /** Whether the passage may be transposed as well, by −5 to +6 half steps. */
  readonly anyKey: boolean;
  /** How many of the best retunings are kept, 1 or more; `USUAL_SUIT` says 10. */
  readonly keep: number;
  /**
   * Whether a string bears to be retuned by some half steps from `start`. `string` is its index in `start.strings`.
   * Left out: see `stringBears`.
   */
  readonly limits?: (string: number, halfSteps: number) => boolean;
}

/** How far a search has come: tunings looked at, of all. */
export interface SuitStep {
  readonly done: number;
  readonly total: number;
  /** The named tunings come first. */
  readonly phase: 'named' | 'retunings';
}

/** Best for this cost, this passage, these limits. */
export interface SuitAnswer {
  /** The tuning that it stands in, at its own pitch; undefined when a note would be left out there. */
  readonly here: Suited | undefined;
  /**
   * Every named tuning of the instrument, easiest first, also those beyond the limits (see `why.borne`). Those that
   * would leave a note out stand last, with `cost` Infinity. The first `keep` have an answer and reasons, the others
   * their cost and how far they are.
   */
  readonly named: readonly Suited[];
  /** The best of the retunings of `start` within the limits, easiest first; empty when none plays every note. */
  readonly best: readonly Suited[];
  /** The best retuning for each number of strings changed; numbers for which none plays every note are left out. */
  readonly byStringsChanged: readonly { readonly changed: number; readonly suited: Suited }[];
  /** Retunings that were searched: to their least cost, or until it was seen to be none of the best. */
  readonly evaluated: number;
  /** Retunings that would leave a note out. */
  readonly unplayable: number;
  /** Retunings that play every note and that the lower bound alone showed to be none of the best. */
  readonly ruledOut: number;
  /** All retunings within the limits: `evaluated + unplayable + ruledOut`. In any key, each with each transposition. */
  readonly total: number;
}

/** One tuning and what the passage costs in it. */
export interface Suited {
  readonly tuning: Tuning;
  /** The trade's name for it on the instrument. */
  readonly name: string | undefined;
  /** By how many half steps the passage is transposed; 0 at pitch. */
  readonly halfSteps: number;
  /** The least cost under the table of constants; Infinity when a note would be left out. */
  readonly cost: number;
  readonly why: SuitedWhy;
  /**
   * The easiest fingering in it, of the transposed notes; undefined when a note would be left out, and see `named`. Its
   * `states` and `edges` count what was looked at to tell it, not the search that found it.
   */
  readonly answer: HandAnswer | undefined;
}

export interface SuitedWhy {
  /** The hardest moment, in words; empty when there is no answer. So are the next three 0. */
  readonly hardest: string;
  /** How many notes are on open strings. */
  readonly openStrings: number;
  /** How many open notes may ring on over the next moment, since their string is not taken there. */
  readonly ringing: number;
  /** How many of the moments have their lowest note on an open string. */
  readonly bassOnOpen: number;
  /** Half steps of retuning from `start`, summed over the strings; a string that only one of them has counts 12. */
  readonly stepsOfRetuning: number;
  readonly stringsChanged: number;
  /** The most half steps by which a string goes above the instrument's usual tuning, 0 or more; for the caution. */
  readonly raisesBy: number;
  /** Whether every string bears it under the limits of the request. */
  readonly borne: boolean;
}
