import type { Grip } from '../../playing/hand/grips';
import { fingerGrip } from '../../playing/hand/grips';
import type { HandOptions } from '../../playing/hand/options';
import type { Target } from '../../playing/target';

/** A string that is stopped or rings open. */
export interface HeldPlace {
  readonly string: number;
  readonly fret: number;
  readonly struck: boolean;
}

/** How a hand holds some places. */
export interface Hold {
  /** Undefined where no hand under these limits holds what is struck. */
  readonly grip: Grip | undefined;
  /** Strings that rang and cannot ring on under the grip. */
  readonly letGo: readonly number[];
  /** By what rules what is struck cannot be held. */
  readonly refused: readonly string[];
}

/** Of more strings that ring than this the others are let go without a try: it bounds the work (engineering value). */
const MOST_RINGING = 6;
/** Fingers are not worked out for more stopped strings than this (engineering value: it bounds the work). */
const MOST_STOPPED = 8;

/**
 * The grip that lets as few strings go as it must; of those that let go as many, the one of least cost. What is struck
 * is always held, or the rules that forbid it are told.
 */
export function holdPlaces(places: readonly HeldPlace[], target: Target, options: HandOptions): Hold {
  const struck = places.filter((place) => place.struck);
  const ringing = places.filter((place) => !place.struck);
  const stopped = struck.filter(({ fret }) => fret > 0).length;
  if (stopped > MOST_STOPPED) {
    const rule = `${stopped} strings are stopped at once, and fingers are worked out for ${MOST_STOPPED} at most`;
    return { grip: undefined, letGo: [], refused: [rule] };
  }
  const tried = ringing.slice(0, Math.min(MOST_RINGING, MOST_STOPPED - stopped));
  for (let kept = tried.length; kept >= 0; kept--) {
    let best: { grip: Grip; held: readonly HeldPlace[] } | undefined;
    for (const held of choices(tried, kept)) {
      const grip = fingerGrip([...struck, ...held], target, options).best;
      if (grip && (!best || grip.cost < best.grip.cost - HAIR)) best = { grip, held };
    }
    if (best) {
      const { held } = best;
      const letGo = ringing.filter((place) => !held.includes(place)).map(({ string }) => string);
      return { grip: best.grip, letGo, refused: [] };
    }
  }
  return { grip: undefined, letGo: [], refused: fingerGrip(struck, target, options).refused };
}

/** Costs that differ by less are equal. */
const HAIR = 1e-9;

/** Every way to take some of a list, in its order. */
function choices<T>(list: readonly T[], count: number): readonly (readonly T[])[] {
  if (count === 0) return [[]];
  return list.flatMap((item, at) => choices(list.slice(at + 1), count - 1).map((rest) => [item, ...rest]));
}
