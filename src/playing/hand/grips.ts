import type { Target } from '../target';
import type { HandConstantName } from './constants';
import type { Finger } from './handAnswer';
import type { HandOptions } from './options';

/** What the hand holds at one moment. */
export interface Grip {
  /** In the order in which the pitches or places were given. */
  readonly placements: readonly GripPlace[];
  /** Fret of the index finger, counted as frets are written; 1 when nothing is stopped. */
  readonly position: number;
  readonly cost: number;
  /** What the cost is made of, dearest first; terms that are 0 are left out. */
  readonly terms: readonly GripTerm[];
  readonly barres: readonly Barre[];
  /** Between the lowest and the highest stopped fret, along the neck. */
  readonly millimetres: number;
}

export interface GripPlace {
  /** Player's string number. */
  readonly string: number;
  readonly fret: number;
  readonly finger: Finger;
}

export interface GripTerm {
  readonly name: HandConstantName;
  /** How often, or how much, in the unit of the constant. */
  readonly amount: number;
  readonly cost: number;
}

/** One finger across strings at one fret. */
export interface Barre {
  readonly finger: 1 | 2 | 3 | 4;
  readonly fret: number;
  /** Player's string numbers, `from` ≥ `to`. */
  readonly from: number;
  readonly to: number;
}

/** All grips that sound some pitches at once and that the hand can hold, one for each set of places, best first. */
export function gripsFor(midis: readonly number[], target: Target, options: HandOptions): readonly Grip[] {
  void [midis, target, options];
  return [];
}

/** The best fingers for given places, or by what rules there are none, with the figures. */
export function fingerGrip(
  places: readonly { readonly string: number; readonly fret: number }[],
  target: Target,
  options: HandOptions,
): { readonly best: Grip | undefined; readonly refused: readonly string[] } {
  void [places, target, options];
  return { best: undefined, refused: [] };
}
