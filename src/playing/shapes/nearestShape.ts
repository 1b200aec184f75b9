import { isReentrant } from '../../instrument/isReentrant';
import { frameOf, type Frame } from '../hand/frame';
import { countTones, type WantedChord } from './wanted';
import { shapeCost } from './cost';
import type { FoundShape } from './found';
import { USUAL_HIGHEST_FRET, type Shape, type ShapeOptions } from './shape';
import { shapeOf } from './shapeOf';
import { choicesOf, type StringChoice } from './strings';
import type { Target } from '../target';
import { weigh } from './weigh';

/** Millimetres that a string counts for which sounded and is silent now: more than a hand's breadth (engineering value). */
const SILENCED = 100;
const MOST_INNER = 2;
const LEAST_STRINGS = 3;

/** A shape beside another one of the same chord. */
export interface NearShape {
  readonly shape: Shape;
  /** Strings that do something else. */
  readonly changed: number;
  /** How far fingers go for it, along the neck. */
  readonly millimetres: number;
}

interface Candidate {
  readonly choices: readonly (StringChoice | undefined)[];
  readonly millimetres: number;
  readonly silenced: number;
}

/**
 * Of all shapes of a chord that the hand can hold the one nearest to another shape: fewest strings changed, then least
 * millimetres, a string that falls silent counted as 100; of equals the one that costs least. A full one goes before
 * any reduced one. Undefined where there is none.
 * @param from by index, low-placed string first, as frets are written; undefined is not played
 */
export function nearestShape(
  from: readonly (number | undefined)[],
  wanted: WantedChord,
  target: Target,
  options: ShapeOptions,
): NearShape | undefined {
  const { hand, highestFret = USUAL_HIGHEST_FRET } = options;
  const frame = frameOf(target, hand);
  const choices = choicesOf(wanted, frame, highestFret, hand.openStrings, hand.strings);
  const reentrant = isReentrant(target.fingerboard.tuning);
  const places = from.map((fret, index) =>
    fret === undefined ? undefined : { written: fret, fret: target.fingerboard.absoluteFret(index, fret) },
  );
  const full = { ...wanted, required: wanted.required | wanted.optional, optional: 0 };
  for (const asked of wanted.optional ? [full, wanted] : [wanted]) {
    for (let changed = 0; changed <= choices.length; changed++) {
      const near = candidates(places, asked, choices, frame, changed, options.leastStrings);
      const best = cheapest(near, wanted, frame, reentrant);
      const shape = best && shapeOf(best.found, target, hand);
      if (shape) return { shape, changed, millimetres: best.millimetres };
    }
  }
  return undefined;
}

/** Shapes that change so many strings. */
function candidates(
  from: readonly (Pick<StringChoice, 'written' | 'fret'> | undefined)[],
  { required, optional, oneOf }: WantedChord,
  choices: readonly (readonly StringChoice[])[],
  { x, widest, thumb }: Frame,
  changed: number,
  leastStrings = Math.min(LEAST_STRINGS, countTones(required | optional)),
): readonly Candidate[] {
  const count = choices.length;
  const found: Candidate[] = [];
  const chosen = new Array<StringChoice | undefined>(count).fill(undefined);
  const rest = new Array<number>(count + 1).fill(0);
  for (let index = count - 1; index >= 0; index--)
    rest[index] = (choices[index] ?? []).reduce((mask, choice) => mask | choice.mask, rest[index + 1] ?? 0);
  const choose = (
    index: number,
    left: number,
    mask: number,
    low: number,
    high: number,
    millimetres: number,
    silenced: number,
  ): void => {
    if (left > count - index || required & ~(mask | (rest[index] ?? 0))) return;
    if (index === count) {
      if (left > 0 || (oneOf && !(mask & oneOf)) || !isFull(chosen, leastStrings)) return;
      found.push({ choices: [...chosen], millimetres, silenced });
      return;
    }
    const old = from[index];
    for (const choice of choices[index] ?? []) {
      const same = choice.written === old?.written;
      if (same ? left === count - index : left === 0) continue;
      const l = choice.open ? low : Math.min(low, choice.fret);
      const h = choice.open ? high : Math.max(high, choice.fret);
      // How far the thumb may be from the fingers is for the fingering to say.
      if (!thumb && h > l && (x[h] ?? 0) - (x[l] ?? 0) > widest + 1e-6) continue;
      const way = same || !old ? 0 : Math.abs((x[choice.fret] ?? 0) - (x[old.fret] ?? 0));
      chosen[index] = choice;
      choose(index + 1, same ? left : left - 1, mask | choice.mask, l, h, millimetres + way, silenced);
    }
    chosen[index] = undefined;
    const isSilent = old === undefined;
    if (isSilent ? left < count - index : left > 0)
      choose(
        index + 1,
        isSilent ? left : left - 1,
        mask,
        low,
        high,
        millimetres,
        silenced + (isSilent ? 0 : 1),
      );
  };
  choose(0, changed, 0, Infinity, -Infinity, 0, 0);
  const far = ({ millimetres, silenced }: Candidate): number => millimetres + SILENCED * silenced;
  return found.sort((a, b) => far(a) - far(b));
}

/** Whether enough strings sound, and few are silent between them. */
function isFull(chosen: readonly (StringChoice | undefined)[], least: number): boolean {
  const first = chosen.findIndex((choice) => choice !== undefined);
  const last = chosen.findLastIndex((choice) => choice !== undefined);
  const sounding = chosen.filter((choice) => choice !== undefined).length;
  return sounding >= least && last - first + 1 - sounding <= MOST_INNER;
}

/** The first that the hand can hold; of those as far away the one of least cost. */
function cheapest(
  near: readonly Candidate[],
  wanted: WantedChord,
  frame: Frame,
  reentrant: boolean,
): { readonly found: FoundShape; readonly millimetres: number } | undefined {
  let best: { found: FoundShape; millimetres: number; far: number } | undefined;
  for (const { choices, millimetres, silenced } of near) {
    const far = millimetres + SILENCED * silenced;
    if (best && far > best.far + 1e-6) break;
    const { extra, ...weighed } = weigh(choices, wanted, reentrant);
    const hand =
      extra === Infinity ? undefined : shapeCost(choices, frame, (best?.found.cost ?? Infinity) - extra);
    if (!hand) continue;
    best = { found: { choices, ...weighed, ...hand, cost: hand.cost + extra }, millimetres, far };
  }
  return best;
}
