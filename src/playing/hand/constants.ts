/** One named figure of the hand model, as it is shown to the player. */
export interface HandConstant {
  readonly value: number;
  readonly unit: string;
  /** Why it is what it is: measured, a player's reason, or an engineering value and said to be one. */
  readonly reason: string;
}

const FIT = 'fitted to 1,025 chord shapes of chords-db 0.5.1, held against 936 others';

/**
 * The one table of the hand model. A cost has no unit of its own: 1 is a shift of the hand with a finger down. The
 * answer is "the least cost under these constants", never "what a good player writes": shapes were fitted to one
 * collection of chords, moves to no data at all.
 */
export const HAND_CONSTANTS = {
  // What no cost can buy.
  limit12: limit(75, '67 mm is the widest in chords-db; more is kept as a setting'),
  limit13: limit(105, '97 mm is the widest in chords-db'),
  limit14: limit(130, 'hard between first and fourth finger (engineering value; the data ends at 97 mm)'),
  limit23: limit(70, '67 mm is the widest in chords-db'),
  limit24: limit(100, '97 mm is the widest in chords-db'),
  limit34: limit(70, '67 mm is the widest in chords-db'),

  // Grips.
  relaxed: constant(22, 'mm a finger step', `how far apart fingers rest; best of 20 to 32: ${FIT}`),
  stretch: constant(0.8, 'per 10 mm beyond relaxed', `a stretch is felt in millimetres: ${FIT}`),
  beyond: constant(
    1,
    'a fret beyond one finger a fret',
    `carries short scales, where millimetres are few: ${FIT}`,
  ),
  skipped: constant(
    2,
    'a finger skipped without a fret for it',
    `the fingers lie one beside the other: ${FIT}`,
  ),
  order: constant(4.5, 'a pair', 'higher finger on the lower-pitched string at one fret: 4 of 2,150 pairs'),
  finger: constant(0.3, 'a finger', `fewer fingers are set down sooner: ${FIT}, weak`),
  finger3: constant(0.6, 'a use', `the third finger moves with its neighbours: ${FIT}, weak`),
  finger4: constant(1, 'a use', `the little finger is the weakest: ${FIT}, weak`),
  noIndex: constant(1.2, 'a grip', `a grip is built from the index finger: ${FIT}, weak`),
  barre1: constant(1.5, 'a barre', `the index bars: ${FIT}`),
  barre2: constant(3.3, 'a barre', `the middle finger seldom bars: ${FIT}`),
  barre3: constant(3.3, 'a barre', `the third finger bars three strings at most: ${FIT}`),
  barre4: constant(4.5, 'a barre', `the little finger bars with least force: ${FIT}`),
  barreString: constant(0.6, 'a string past two', `force grows with each string pressed: ${FIT}`),
  barreOver: constant(
    1.5,
    'a barre',
    `a finger barring above a lower note on the next higher string must bend: ${FIT}`,
  ),
  barreMuted: constant(1.5, 'a string', `a string under a barre has to be kept silent: ${FIT}`),
  muted: constant(2, 'a string', `a muted string inside a strum has to be damped: ${FIT}`),
  apart: constant(
    0.5,
    'an empty string past two',
    `neighbouring fingers far apart across the strings: ${FIT}, weak`,
  ),
  position: constant(
    0.55,
    'a fret of the index',
    `low on the neck: a habit of the collection, not ease: ${FIT}`,
  ),
  openHigh: constant(
    0.5,
    'an open string and fret of the index past the third',
    `an open string jars with a hand up the neck: ${FIT}`,
  ),

  // The same grips inside a passage.
  chordShare: constant(
    0.5,
    'of a grip of four notes or more',
    'in a passage moves weigh as much as shapes (engineering value)',
  ),
  lineShare: constant(
    0.5,
    'of stretch, order, skipped fingers and barres of one to three notes',
    'as for chords (engineering value)',
  ),
  linePosition: constant(
    0.02,
    'a fret of the index',
    'low when all else is equal; from 0.03 a movable scale slides down the neck',
  ),
  lineFinger3: constant(0.1, 'a use', 'third finger, in a line (engineering value)'),
  lineFinger4: constant(0.3, 'a use', 'little finger, in a line (engineering value)'),
  lineOpenHigh: constant(
    0.2,
    'an open note and fret of the index past the third',
    'the timbre of an open string stands out up the neck (engineering value)',
  ),

  // Moves.
  travel: constant(
    0.01,
    'a millimetre in 0.25 s',
    'the hand along the neck; up to 0.02 first-position scales stay (engineering value)',
  ),
  shortest: constant(
    0.06,
    's',
    'no move is reckoned faster: notes in less belong together (engineering value)',
  ),
  shift: constant(1, 'a shift with a finger down', 'the unit: the line is broken or slid'),
  freeShift: constant(
    0.1,
    'a shift under open strings',
    'open strings allow shifts (playing conventions, from memory)',
  ),
  setDown: constant(0.3, 'a finger', 'a finger that was up comes down (engineering value)'),
  moved: constant(0.7, 'a finger', 'a finger goes from one place to another (engineering value)'),
  crossing: constant(
    0.15,
    'a string',
    'across the strings, apart from travel (fingering literature; engineering value)',
  ),
  reach: constant(
    0.7,
    'a reach',
    'first finger a fret back or fourth a fret up without a shift: below a shift, above a weak finger',
  ),
  cut: constant(3, 'a note', 'a note that should ring is let go: above any single move but a long shift'),
} as const satisfies Readonly<Record<string, HandConstant>>;

export type HandConstantName = keyof typeof HAND_CONSTANTS;

/** A whole table; values may differ from those of `HAND_CONSTANTS`. */
export type HandConstants = Readonly<Record<HandConstantName, HandConstant>>;

/**
 * The table with some values changed.
 * @example withValues({ limit14: 115, travel: 0.02 })
 */
export function withValues(
  values: Partial<Readonly<Record<HandConstantName, number>>>,
  base: HandConstants = HAND_CONSTANTS,
): HandConstants {
  const changed: Record<string, HandConstant> = { ...base };
  for (const [name, value] of Object.entries(values)) {
    const old = changed[name];
    if (old) changed[name] = { ...old, value };
  }
  return changed as Record<HandConstantName, HandConstant>;
}

function constant(value: number, unit: string, reason: string): HandConstant {
  return { value, unit, reason };
}

function limit(value: number, reason: string): HandConstant {
  return { value, unit: 'mm along the neck', reason };
}
