import { isReentrant } from '../../instrument/isReentrant';
import { frameOf } from '../hand/frame';
import type { Target } from '../target';
import type { FoundShape } from './found';
import { FULLER } from './ranking';
import { firstChoices, spreadOut } from './spread';
import { searchNeck } from './windows';
import { choicesOf } from './strings';
import { USUAL_HIGHEST_FRET, USUAL_LIMIT, type Shape, type ShapeOptions } from './shape';
import { shapeOf } from './shapeOf';
import type { WantedChord } from './wanted';

export type { Shape, ShapeOptions } from './shape';

/** Shapes kept for each place on the neck, so that variations can be passed over; as many as the limit, if that is more. */
const LEAST_KEPT = 12;
const HAIR = 1e-6;

/**
 * Shapes that sound a chord and that the hand can hold, best first: every pitch class in the chord, all that must sound
 * there, the bass behind a slash as the lowest sounding pitch. With `target.slide` one straight bar.
 *
 * Which is best is told by the hand's cost of the shape by itself (`hand/constants.ts`) and by what is thin or upside
 * down about it (`ranking.ts`); of equals the one with the lower frets.
 * @param wanted sounding pitch classes, of `wantedChord` or `wantedSet`
 * @example findShapes(wantedChord(readChordName('C').value), standard, { hand: handOptions() })[0].frets
 *   // [undefined, 3, 2, 0, 1, 0]
 */
export function findShapes(wanted: WantedChord, target: Target, options: ShapeOptions): readonly Shape[] {
  const { limit = USUAL_LIMIT, highestFret = USUAL_HIGHEST_FRET, spread = true, hand } = options;
  const frame = frameOf(target, hand);
  const choices = choicesOf(wanted, frame, highestFret, hand.openStrings, hand.strings);
  const most = Number.isFinite(limit) ? Math.max(LEAST_KEPT, limit) : Infinity;
  const reentrant = isReentrant(target.fingerboard.tuning);
  const search = { choices, wanted, frame, most, leastStrings: options.leastStrings, reentrant };
  const spreads = spread && Number.isFinite(limit);
  const dearest = (sofar: readonly FoundShape[]): number => {
    const enough = spreads ? [...firstChoices(sofar, limit)] : sofar.slice(0, limit);
    const last = enough.length < limit ? undefined : enough.at(-1);
    // A fuller form of what is shown may cost a little more than the last that is.
    return last ? last.cost + (spreads ? FULLER : HAIR) : Infinity;
  };
  const found = searchNeck(search, dearest);
  const chosen = spreads ? spreadOut(found, limit) : found.slice(0, limit);
  return chosen.flatMap((one) => shapeOf(one, target, hand) ?? []);
}
