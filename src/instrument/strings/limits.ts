/** Where something is told about a string. Engineering values, which the user may set. */
export interface StrainLimits {
  /** The share of the least strength of plain steel above which it is told as information. */
  readonly information: number;
  /** The share above which it is a warning. At 1, the strength itself, it is an error; that is physics. */
  readonly warning: number;
  /** The share of its usual tension below which a string is told as slack. */
  readonly slack: number;
}

/**
 * What holds until the user sets something else. Spring makers give 65–75 % of the strength as the elastic limit of
 * music wire in tension (strings-and-frets.md §2.2), so 70 % warns and 60 % tells beforehand; 60 % of the usual tension
 * is a string tuned down by some four and a half half steps (2^(−4.4 / 6)).
 */
export const USUAL_LIMITS: StrainLimits = { information: 0.6, warning: 0.7, slack: 0.6 };
