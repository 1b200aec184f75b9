import { PLAIN_COSTS, type Costs } from './costs';
import { placeAll } from './placeAll';
import type { Target } from './target';

/** A note to be placed: its sound and its ties to other notes, without any text. */
export interface PassageNote {
  /** The caller's own, unique in the passage. */
  readonly id: number;
  /**
   * Sounding MIDI number of the (first) pitch, decimals for cents. Undefined for a muted stroke, which keeps its string
   * number where that string exists, else takes any free string.
   */
  readonly midi: number | undefined;
  /** When it begins, in quarter notes. Notes whose onsets differ by less than a billionth begin together. */
  readonly onset: number;
  /** When it stops ringing, in quarter notes. The plain cost does not look at it. */
  readonly end: number;
  /** The player's number of the string it came from: where a muted stroke stays, and the last tie-break. */
  readonly string: number;
  /**
   * Id of the earlier note whose string it must share (hammer-on, pull-off, slide). No other note may take that string
   * between the two. An id that is not in the passage binds nothing.
   */
  readonly joinedTo: number | undefined;
  /**
   * `any` fret or open string; `stopped` for bends, slides and vibrato, never an open string; harmonics must be found at a
   * node that sounds the same pitch within a cent.
   */
  readonly need: 'any' | 'stopped' | 'natural-harmonic' | 'artificial-harmonic';
  /** Other pitches the technique needs on the same string (bend, trill or slide targets), MIDI numbers. */
  readonly reaches: readonly number[];
}

/** Where a note is played. */
export interface Placement {
  readonly id: number;
  /** Player's string number, 1 for the string at the top of a tab. */
  readonly string: number;
  /** The fret to write; 0 for an open string, a natural harmonic and a muted stroke. */
  readonly fret: number;
  /** Where a harmonic is touched, counted as frets are written; may have one decimal (3.2). */
  readonly touched?: number;
}

export type UnplacedReason =
  | 'below the lowest string'
  | 'past the last fret'
  | 'two notes need one string'
  | 'out of reach'
  | 'technique cannot be kept'
  | 'no such harmonic';

/** A note with no place, and why. */
export interface Unplaced {
  readonly id: number;
  readonly reason: UnplacedReason;
  /** One clear sentence with the figures. */
  readonly detail: string;
}

export interface Answer {
  /** In time order. Together with `unplaced` exactly the notes of the passage. */
  readonly placements: readonly Placement[];
  readonly unplaced: readonly Unplaced[];
  /** The least cost under the table, in millimetres of hand travel; see `Costs`. */
  readonly cost: number;
  /** Nodes of the layered graph. */
  readonly states: number;
  /** Moves that were compared. */
  readonly edges: number;
}

/**
 * Places a passage on a fingerboard at its own pitches, exactly: as few notes as possible are left out; among those
 * answers the fewest outer voices and then the fewest pitch classes are lost; among those the cost of `costs` is
 * least; ties go to the lowest sum of frets (a harmonic counts its partial), then to the most notes on the string they came from.
 * Every note is placed or listed with its reason. Hard rules: notes that begin together have strings of their own;
 * joined notes share a string; nothing beyond the reach, below the nut or past the last fret.
 * @example placePassage([{ id: 1, midi: 48, onset: 0, end: 1, string: 5, joinedTo: undefined, need: 'any',
 *   reaches: [] }], openG).placements // [{ id: 1, string: 5, fret: 5 }]
 */
export function placePassage(
  notes: readonly PassageNote[],
  target: Target,
  costs: Costs = PLAIN_COSTS,
): Answer {
  return placeAll(notes, target, costs);
}

/**
 * What a given placement costs under the same table, with the hand moved as well as it can be; undefined when it breaks
 * a hard rule or leaves a note out. To set a player's own fingering beside the search's.
 */
export function costOfPlacement(
  notes: readonly PassageNote[],
  placements: readonly Placement[],
  target: Target,
  costs: Costs = PLAIN_COSTS,
): number | undefined {
  const answer = placeAll(notes, target, costs, new Map(placements.map((place) => [place.id, place])));
  return answer.unplaced.length > 0 ? undefined : answer.cost;
}
