import { fretDistance } from '../../instrument/neck';
import { neckOf } from '../neck';
import { stringCount, USUAL_REACH, type Target } from '../target';
import type { HandConstantName } from './constants';
import type { HandCaps, HandOptions } from './options';

/** The fingers as the search counts them: 1 to 4, and the thumb over the neck. */
export const THUMB = 5;

/** Costs are added in whole millionths, so that sums are exact and equal costs are equal. */
export const UNIT = 1e6;

/** Everything about a hand on a neck that does not change within a passage. Frets are counted from the nut. */
export interface Frame {
  readonly target: Target;
  readonly strings: number;
  /** The nut, or the full capo. */
  readonly zero: number;
  /** Lowest and highest place of the index finger. */
  readonly lowest: number;
  readonly highest: number;
  /** Millimetres from the nut, by fret. */
  readonly x: readonly number[];
  /** Millimetres between two fingers, `limits[i][j]` for i < j; wider for a hand with a wider reach. */
  readonly limits: readonly (readonly number[])[];
  /** The widest of them: no two fingers are farther apart. */
  readonly widest: number;
  /** What the player allows between lowest and highest stopped place, whatever the fingers; millimetres. */
  readonly span: number;
  readonly k: Readonly<Record<HandConstantName, number>>;
  readonly thumb: boolean;
  readonly slide: boolean;
  readonly caps: HandCaps;
}

const LAST_FRET = 48;

/** The frame of a target under some options. */
export function frameOf(target: Target, options: HandOptions): Frame {
  const neck = neckOf(target);
  const k = Object.fromEntries(
    Object.entries(options.constants).map(([name, { value }]) => [name, value]),
  ) as Record<HandConstantName, number>;
  const size = target.reach / USUAL_REACH;
  const none = [Infinity, Infinity, Infinity, Infinity, Infinity];
  const row = (...limits: number[]): number[] => none.map((free, at) => (limits[at] ?? free) * size);
  const far = Infinity;
  const widest = Math.max(k.limit12, k.limit13, k.limit14, k.limit23, k.limit24, k.limit34) * size;
  return {
    target,
    strings: stringCount(target),
    zero: neck.lowestHand - 1,
    lowest: neck.lowestHand,
    highest: neck.highestHand,
    x: Array.from({ length: LAST_FRET + 1 }, (_, fret) => fretDistance(fret, target.scaleLength)),
    limits: [
      none,
      row(far, far, k.limit12, k.limit13, k.limit14),
      row(far, far, far, k.limit23, k.limit24),
      row(far, far, far, far, k.limit34),
      none,
    ],
    widest,
    span: options.caps.span ?? Infinity,
    k,
    thumb: options.thumb,
    slide: target.slide,
    caps: options.caps,
  };
}

/** Whole millionths of a cost. */
export function exact(cost: number): number {
  return Math.round(cost * UNIT);
}
