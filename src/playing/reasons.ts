import type { Hand } from './grips';
import type { Item } from './moments';
import type { Unplaced } from './passage';
import type { Place } from './places';

/**
 * Why a note that has places of its own was left out beside the notes that were kept.
 * @param kept the other notes of the moment that have a place in the answer, and earlier ones held through it
 * @param sourceKept whether the note that it is joined to has a place; true when it is joined to none
 */
export function reasonFor(item: Item, kept: readonly Item[], sourceKept: boolean, hand: Hand): Unplaced {
  const { id } = item.note;
  if (!sourceKept) {
    const detail = 'The note that it is joined to has no place.';
    return { id, reason: 'technique cannot be kept', detail };
  }
  const together = [item, ...kept].map(({ places }) => places);
  if (!fits(together, Infinity)) {
    const strings = [...new Set(item.places.map(({ index }) => hand.strings - index))].sort((a, b) => a - b);
    const where = strings.length === 1 ? `string ${strings[0]}` : `strings ${strings.join(', ')}`;
    const detail = `It can sound on ${where} only, and the notes kept beside it leave no string.`;
    return { id, reason: 'two notes need one string', detail };
  }
  if (!fits(together, hand.slide ? 0 : hand.reach)) {
    const detail = hand.slide
      ? 'One straight bar cannot stop it together with the other notes of the moment.'
      : `Together with the other notes of the moment it takes a stretch of more than ${hand.reach / 1000} mm.`;
    return { id, reason: 'out of reach', detail };
  }
  const detail = 'A note joined to it, or that it is joined to, cannot stay on one string with it.';
  return { id, reason: 'technique cannot be kept', detail };
}

/** Whether notes can sound together: a string for each, and stopped places no farther apart than `reach`. */
function fits(notes: readonly (readonly Place[])[], reach: number): boolean {
  const taken = new Set<number>();
  const choose = (at: number, low: number, high: number): boolean => {
    const places = notes[at];
    if (!places) return true;
    return places.some((place) => {
      if (taken.has(place.index)) return false;
      const stopped = place.stoppedFret !== undefined;
      const newLow = stopped ? Math.min(low, place.position) : low;
      const newHigh = stopped ? Math.max(high, place.position) : high;
      if (newHigh - newLow > reach) return false;
      taken.add(place.index);
      const done = choose(at + 1, newLow, newHigh);
      taken.delete(place.index);
      return done;
    });
  };
  return choose(0, Infinity, -Infinity);
}
