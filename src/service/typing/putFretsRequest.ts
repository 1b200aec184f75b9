/** What one string is to do at a column. */
export type StringSign = number | 'x' | 'nothing';

/**
 * What is to stand at one moment of a system, by player's string numbers: a fret as written, `x` for a muted stroke,
 * `nothing` to take away what stands there. Strings that are not named stay as they are.
 */
export type StringSigns = ReadonlyMap<number, StringSign>;
