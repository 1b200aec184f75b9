/**
 * The answer of the tuning sheet: plain records, numbers, texts and lists, that go through a worker or a file. String
 * numbers are the player's (1 is the top line of the tab), lists of strings begin with the lowest-placed one, frets
 * are numbers as they are written under the capo in force, half steps carry cents as decimals. Every `words` is ready
 * to be shown: a sentence without its full stop, in plain English.
 */
export interface SheetRequest {
  /** The tuning to come from, by name or typed. Left out: the piece's earlier one, else the instrument's usual one. */
  readonly from?: string;
  /** The chord to look for with a bar, such as `Am`. Left out: the key's three main chords, or those of the open chord. */
  readonly chord?: string;
  /** Look for places of a bar though the fingers stop the strings; where the header says slide it is done anyway. */
  readonly slide?: boolean;
}

/** Everything about a tuning on one sheet. */
export interface SheetAnswer {
  readonly tuning: SheetTuning;
  readonly open: SheetOpenStrings;
  readonly strings: readonly SheetString[];
  /** How to tune one string from another by ear, in the order of work. */
  readonly tuneBy: readonly SheetCheck[];
  /** For each string that has one: where another string sounds its octave. */
  readonly octaves: readonly SheetCheck[];
  /** Pairs of natural harmonics that should agree, the best first; together they link as many strings as can be. */
  readonly harmonics: readonly SheetHarmonicCheck[];
  readonly retuning: SheetRetuning;
  readonly barres: SheetBarres;
  /** Null where the fingers stop the strings and nobody asked. */
  readonly slide: SheetSlide | null;
  /** Null where no key is written. */
  readonly scale: SheetScale | null;
}

/** What the sheet is about. */
export interface SheetTuning {
  /** `DADGAD`; null where it has no name. */
  readonly name: string | null;
  /** `D2 A2 D3 G3 A3 D4`; courses with a slash. */
  readonly notes: string;
  /** What a `tuning:` field and `from` take: the name where it has one, else the notes. */
  readonly value: string;
  readonly instrument: string;
  /** Hertz of A4. */
  readonly referencePitch: number;
  /** `capo at fret 2`, `capo at fret 2 on strings 5, 4 and 3`; null for none. */
  readonly capo: string | null;
  /** `D mixolydian`, as played under a full capo; null where none is written. */
  readonly key: string | null;
  /** A heading: `Open G on the guitar`. */
  readonly title: string;
  /** Short facts for a line below the heading: `A4 = 440 Hz`, `capo at fret 2`, `key of D major`. */
  readonly facts: readonly string[];
}

/** What the open strings make, without a capo. */
export interface SheetOpenStrings {
  /** `Dsus4`; null where they make no everyday chord. */
  readonly chord: string | null;
  /** Other names, the likeliest first. */
  readonly alternatives: readonly string[];
  /** Notes, each once, from the lowest up. */
  readonly notes: readonly string[];
  readonly words: string;
}

export interface SheetString {
  readonly number: number;
  /** `G2`, or `G2/G3` for a course. */
  readonly note: string;
  /** One pitch, or the two of a course in the order written; without the capo. */
  readonly pitches: readonly SheetPitch[];
  /** `root`, `third`, `flat third`, `fifth`: its place in the chord of the open strings; null where there is none. */
  readonly role: string | null;
  /** The fret at which the string begins: 0, or 5 for a banjo's fifth string. */
  readonly firstFret: number;
  /**
   * Half steps from this string up to the next one (of a number lower by 1): the fret that tunes it, negative where the
   * next one is lower; null for string 1.
   */
  readonly toNext: number | null;
}

export interface SheetPitch {
  /** `G#3`, without cents. */
  readonly note: string;
  /** MIDI number, decimals for cents. */
  readonly midi: number;
  /** Hertz at the reference pitch, to a hundredth. */
  readonly frequency: number;
}

/** One string stopped at a fret (0: open) gives what another should sound. */
export interface SheetCheck {
  /** The string that is tuned. */
  readonly string: number;
  /** The string that it is compared with. */
  readonly by: number;
  /** The fret at which `by` is stopped; where `stops` is `string`, that at which the tuned string is. */
  readonly fret: number;
  readonly stops: 'by' | 'string';
  /** Half steps from what `by` then sounds up to what `string` then sounds: 0, or ±12 and ±24 for octaves. */
  readonly apart: number;
  readonly words: string;
}

/** Two natural harmonics of different strings, or one and an open string. */
export interface SheetHarmonicCheck {
  readonly first: SheetTouched;
  readonly second: SheetTouched;
  /** `E4`: the note that both are near. */
  readonly note: string;
  /** Cents from the first up to the second when both strings are tuned as written; 0 where they agree. */
  readonly cents: number;
  /** Beats a second that are then heard: the difference of the two frequencies in hertz, to a hundredth. */
  readonly beats: number;
  readonly words: string;
}

export interface SheetTouched {
  readonly string: number;
  /** Where it is touched, as written; 0 for an open string. */
  readonly touched: number;
  /** 1 for an open string, 2 for the harmonic at fret 12, 3 at fret 7, 4 at fret 5, 5 at fret 4. */
  readonly partial: number;
  /** Hertz, to a thousandth. */
  readonly frequency: number;
}

/** From another tuning into this one. */
export interface SheetRetuning {
  readonly from: {
    readonly name: string | null;
    readonly notes: string;
    readonly value: string;
    /** Asked for, the piece's earlier one, or the instrument's usual one. */
    readonly why: 'asked' | 'earlier' | 'usual';
  };
  /** Whether both are the same: then there is nothing to turn, and lists are empty. */
  readonly same: boolean;
  /** `From standard: lower strings 6, 2 and 1 by 2 half steps`. */
  readonly words: string;
  /** Every string of either tuning. */
  readonly strings: readonly SheetStringChange[];
  /** In the order of work, one string each. */
  readonly steps: readonly SheetStep[];
  /** The last thing to do, `Check every string again: …`; empty where nothing is turned. */
  readonly lastCheck: string;
  readonly pull: SheetPull;
  readonly carriesOver: SheetCarriesOver;
  /** Whole sentences about safety, to be shown wherever the steps are; empty where no string goes up. */
  readonly cautions: readonly string[];
}

export interface SheetStringChange {
  readonly number: number;
  /** Null where the other tuning has no such string. */
  readonly from: string | null;
  /** Null where the string is taken off. */
  readonly to: string | null;
  /** Null where a string is added, taken off or changed for another. */
  readonly halfSteps: number | null;
  /** `exchange`: too far to turn, so that another string has to be put on. */
  readonly change: 'stays' | 'down' | 'up' | 'add' | 'off' | 'exchange';
  /** `up 2 half steps`, `stays`, `off`. */
  readonly words: string;
}

export interface SheetStep {
  readonly number: number;
  readonly change: 'down' | 'up' | 'add' | 'off' | 'exchange';
  readonly halfSteps: number | null;
  /** `Lower string 6 by 2 half steps, from E2 to D2 (73.42 Hz)`. */
  readonly words: string;
  /** `It sounds an octave below open string 4`; empty for a string that is taken off. */
  readonly check: string;
  /** Where to hear it, in figures; null where only a tuner or a fork tells. */
  readonly by: SheetCheck | null;
  /** The whole set's pull after the step, as a share of its pull at the start (1 is as much). */
  readonly pull: number;
}

/** How hard the whole set pulls at the neck; at no step more than at the start or at the end. */
export interface SheetPull {
  /** Shares of the start: 1.12 is 12 % more. */
  readonly end: number;
  readonly highest: number;
  readonly lowest: number;
  /** Newtons at the start and at the end; null where the strings' weights are not known. */
  readonly newtons: { readonly start: number; readonly end: number } | null;
  readonly words: string;
}

/** What a player of the other tuning already knows. */
export interface SheetCarriesOver {
  readonly unchanged: readonly number[];
  /** Strings that have the note names of other strings of the tuning before, such as string 5 of open E those of string 2. */
  readonly renamed: readonly { readonly number: number; readonly as: readonly number[] }[];
  /** Strings whose note no string had before. */
  readonly fresh: readonly number[];
  /** Strings that moved by the same half steps, two or more: what lies on them keeps its shape. */
  readonly together: readonly { readonly strings: readonly number[]; readonly halfSteps: number }[];
  readonly words: readonly string[];
}

/** One finger or bar straight over the strings. */
export interface SheetBarres {
  /** The strings it lies over: those that begin at the nut. */
  readonly strings: readonly number[];
  /** From fret 0 (all open) to 12, or as far as the neck goes. */
  readonly frets: readonly SheetBarre[];
  /** What degrees are counted from: `degrees in G major`, `counted from the open chord`. */
  readonly words: string;
  /** What to know beside, such as a short string that rings on; may be empty. */
  readonly remark: string;
}

export interface SheetBarre {
  readonly fret: number;
  /** As played under a full capo; null where the strings make no everyday chord. */
  readonly chord: string | null;
  /** As it sounds under a full capo; null without one. */
  readonly sounds: string | null;
  /** Notes from the bass up, as played. */
  readonly notes: readonly string[];
  /** `the four chord`, or `a fourth above the open chord`; null where there is no chord. */
  readonly degree: string | null;
  /** Whether all its notes are in the key; null where none is written. */
  readonly inKey: boolean | null;
  /** One of the three main chords: the first, fourth or fifth degree. */
  readonly main: boolean;
  /** `Fret 5: C, the four chord`. */
  readonly words: string;
}

/** Where a slide player's bar gives the wanted chords. */
export interface SheetSlide {
  readonly chords: readonly SheetSlideChord[];
  readonly words: string;
}

export interface SheetSlideChord {
  readonly chord: string;
  readonly degree: string | null;
  /** Complete ones first, straight before slanted, low before high. */
  readonly places: readonly SheetSlidePlace[];
  /** What is there in a sentence, or why there is nothing. */
  readonly words: string;
}

/** A bar over 2 to 4 neighbouring strings, straight, or slanted over 2 or 3. */
export interface SheetSlidePlace {
  /** At the lowest-placed of the strings. */
  readonly fret: number;
  /** Frets from one string to the next, −2 to 2; 0 is straight. */
  readonly slant: number;
  readonly strings: readonly { readonly number: number; readonly fret: number; readonly note: string }[];
  /** Tones of the chord that do not sound, in words: `fifth`. */
  readonly leavesOut: readonly string[];
  /** Each third in it, with the cents by which it is wider (+) or narrower (−) than the just one. */
  readonly thirds: readonly {
    readonly low: number;
    readonly high: number;
    readonly kind: 'major' | 'minor';
    readonly cents: number;
  }[];
  readonly words: string;
}

/** The frets of a scale as sets, each for the strings that share it. */
export interface SheetScale {
  /** `G major`. */
  readonly name: string;
  readonly notes: readonly string[];
  readonly sets: readonly SheetScaleSet[];
  /** To copy: `G major: 0 2 4 5 … on strings 5, 3 and 1; 0 2 3 5 … on the others`. */
  readonly words: string;
}

export interface SheetScaleSet {
  readonly strings: readonly number[];
  /** Rising, from 0 to 12. */
  readonly frets: readonly number[];
  /** Names of the open strings, each once: `D`, `A`. */
  readonly names: readonly string[];
}

/** The sheet on one page, to print or to hand out. */
export interface HandoutAnswer {
  readonly title: string;
  /** A file name without its ending, of letters, digits and hyphens. */
  readonly fileName: string;
  /** A4 portrait, black on white; a well-formed SVG document of its own. */
  readonly svg: string;
  readonly text: string;
}
