import type { FoundShape } from './found';
import { SHOWN_A_PLACE } from './ranking';

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
  for (const shape of found) {
    if (chosen.size >= limit) break;
    const there = places.get(shape.position) ?? 0;
    if (there >= SHOWN_A_PLACE || !isNew(shape, chosen)) continue;
    chosen.add(shape);
    places.set(shape.position, there + 1);
  }
  return chosen;
}

function isNew(shape: FoundShape, chosen: ReadonlySet<FoundShape>): boolean {
  for (const other of chosen) if (isVariation(shape, other)) return false;
  return true;
}

/** Whether a shape differs from another in one string at most, or is the other with fewer strings. */
function isVariation(shape: FoundShape, other: FoundShape): boolean {
  let differ = 0;
  let more = 0;
  shape.choices.forEach((choice, index) => {
    if (choice?.written === other.choices[index]?.written) return;
    differ++;
    if (choice) more++;
  });
  return differ <= 1 || more === 0;
}
