import type { StrainState } from '../../instrument/strings/strainState';

export type { StrainState };

/** What the strings bear, in plain records: figures for those who reckon on, sentences for those who read. */
export interface StringsAnswer {
  /** The instrument's name. */
  readonly instrument: string;
  /** The tuning's value as `tuning:` takes it, and its notes, low string first. */
  readonly tuning: string;
  readonly notes: string;
  /** Low string first, as `gauges:` takes them; null where none is known. */
  readonly gauges: string | null;
  /**
   * `written` in the text or the request; `usual` for the instrument; `octave` for a guitar strung high, whose low
   * strings are an octave up; `unknown` where none is written and none is usual.
   */
  readonly gaugesAre: 'written' | 'usual' | 'octave' | 'unknown';
  /** Millimetres. */
  readonly scaleLength: number;
  /** Hertz of A4. */
  readonly referencePitch: number;
  /** Low string first; the two strings of a course one after the other. */
  readonly strings: readonly StringStrain[];
  /** The whole set; null where not every string's tension is known. */
  readonly total: SetPull | null;
  /** What the changes are counted from: `the usual set of the guitar, 46w …, in standard tuning at 648 mm`. */
  readonly against: string;
  /** What is to know about single strings, in the order of `strings`: near breaking, slack, the first to break. */
  readonly told: readonly string[];
  /** What was assumed, why wound strings have no figure of strength, what is not known. */
  readonly remarks: readonly string[];
  /** What keeps someone from harm; a client shows it without being asked. */
  readonly cautions: readonly string[];
}

/** One string. Figures that are not known are null. */
export interface StringStrain {
  /** As players number them; string 1 is the top line of the tab. */
  readonly number: number;
  /** 2 for the second string of a course. */
  readonly course: 1 | 2;
  /** The open string's note with its octave. */
  readonly note: string;
  /** As `gauges:` takes it, such as `46w`. */
  readonly gauge: string | null;
  /** `plain steel`, `nickel-plated wound` … */
  readonly material: string | null;
  /** Against the usual set in the usual tuning, the first thing to show. */
  readonly change: StrainChange | null;
  /** Half steps above the usual tuning of the instrument; null for a string that it has not. */
  readonly halfSteps: number | null;
  /** Tension: newtons, and pounds of force. */
  readonly newtons: number | null;
  readonly pounds: number | null;
  /** For plain steel of the sizes that ASTM A228 lists; else null. */
  readonly steel: SteelStrain | null;
  /**
   * `first to break`: near its strength at its usual pitch and gauge, which is no warning. `outside`: its gauge lies
   * beyond the published sizes.
   */
  readonly state: StrainState;
  /** One sentence for the state; empty where there is nothing to tell. */
  readonly told: string;
  /** A common size that has about the usual tension at this pitch; null where the string pulls about as usual. */
  readonly suggestedGauge: string | null;
}

/** How much more or less a string or a set pulls. */
export interface StrainChange {
  /** New by usual: 1.26 is 26 % more. */
  readonly ratio: number;
  /** Null where only the ratio is known. */
  readonly newtons: number | null;
  readonly pounds: number | null;
}

/** Plain steel against the least tensile strength of ASTM A228 music wire of its size. */
export interface SteelStrain {
  readonly megapascals: number;
  /** The share of the least strength, 0.53; 1 and more cannot be strung. */
  readonly share: number;
  /** Half steps up until the least strength is reached; below 0 where it is passed. */
  readonly halfStepsToBreaking: number;
  /** Half steps up to the share at which a warning begins (`pegbox.strain`); below 0 where it is passed. */
  readonly halfStepsToWarning: number;
}

/** What a set pulls on the neck. */
export interface SetPull {
  readonly newtons: number;
  readonly pounds: number;
  /** Null where the usual set is not known. */
  readonly change: StrainChange | null;
}

/** What is asked without a document. */
export interface StringsRequest {
  /** A tuning by name or typed; the usual one of the instrument where it is left out. */
  readonly tuning?: string;
  /** By name; a guitar where it is left out. */
  readonly instrument?: string;
  /** As in `gauges:`. */
  readonly gauges?: string;
  /** As in `scale length:`, with its unit. */
  readonly scaleLength?: string;
  /** As in `reference pitch:`. */
  readonly referencePitch?: string;
}
