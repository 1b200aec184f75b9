import type { FoundShape } from './found';
import { countTones } from './wanted';
import { FULLER, SHOWN_A_PLACE } from './ranking';

/**
 * The best shapes without many variations of one place on the neck: first those that differ in two strings or more from
 * each one chosen before and of which few lie in the same position, then more of the same position, then the rest; told
 * in the order of their cost.
 * @param found best first
 */
export function spreadOut(found: readonly FoundShape[], limit: number): readonly FoundShape[] {
  const chosen = firstChoices(found, limit);
  const take = (may: (shape: FoundShape) => boolean): void => {
    for (const shape of found) {
      if (chosen.size >= limit) return;
      if (!chosen.has(shape) && may(shape)) chosen.add(shape);
    }
  };
  take((shape) => isNew(shape, chosen));
  take(() => true);
  return found.filter((shape) => chosen.has(shape));
}

/** Shapes that are no variations of each other, few of one position; best first. */
export function firstChoices(found: readonly FoundShape[], limit: number): Set<FoundShape> {
  const chosen = new Set<FoundShape>();
  const places = new Map<number, number>();
  const placeOf = ({ position, rooted }: FoundShape): number => position * 2 + (rooted ? 0 : 1);
  const hasRoom = (shape: FoundShape): boolean => (places.get(placeOf(shape)) ?? 0) < SHOWN_A_PLACE;
  for (const one of found) {
    if (chosen.size >= limit) break;
    if (!hasRoom(one) || !isNew(one, chosen)) continue;
    const shape = fuller(one, found);
    if (shape !== one && !isNew(shape, chosen)) continue;
    chosen.add(shape);
    places.set(placeOf(shape), (places.get(placeOf(shape)) ?? 0) + 1);
  }
  return chosen;
}

function isNew(shape: FoundShape, chosen: ReadonlySet<FoundShape>): boolean {
  for (const other of chosen) if (isVariation(shape, other)) return false;
  return true;
}

/**
 * The same shape with more strings, where they cost little; as many as there are, and of those the cheapest. A chord of
 * two tones wants no more strings than it has.
 */
function fuller(shape: FoundShape, found: readonly FoundShape[]): FoundShape {
  if (countTones(shape.sounding) <= 2) return shape;
  let best = shape;
  let most = soundingStrings(shape);
  for (const other of found) {
    if (other.cost > shape.cost + FULLER) break;
    if (other.bass !== shape.bass || other.leftOut !== shape.leftOut) continue;
    const strings = soundingStrings(other);
    const holds = shape.choices.every(
      (choice, index) => !choice || choice.written === other.choices[index]?.written,
    );
    if (strings <= most || !holds) continue;
    [best, most] = [other, strings];
  }
  return best;
}

function soundingStrings({ choices }: FoundShape): number {
  return choices.filter((choice) => choice !== undefined).length;
}

/**
 * Whether a shape differs from another in one string at most, or is the other with fewer strings. One with the root in
 * the bass is no variation of one without.
 */
function isVariation(shape: FoundShape, other: FoundShape): boolean {
  if (shape.rooted && !other.rooted) return false;
  let differ = 0;
  let more = 0;
  shape.choices.forEach((choice, index) => {
    if (choice?.written === other.choices[index]?.written) return;
    differ++;
    if (choice) more++;
  });
  return differ <= 1 || more === 0;
}
