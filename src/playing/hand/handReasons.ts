import { handOf } from '../placeAll';
import { reasonFor } from '../reasons';
import type { Item, Moment } from '../moments';
import type { Unplaced } from '../passage';
import type { Place } from '../places';
import { eachFingering, type Stop } from './fingering';
import type { Frame } from './frame';

/** Why a note that has places of its own was left out beside the notes that were kept. */
export function whyLeftOut(
  item: Item,
  moment: Moment,
  at: number,
  chosen: ReadonlyMap<Item, Place>,
  frame: Frame,
): Unplaced {
  const has = (other: Item): boolean => chosen.has(other);
  const held = moment.incoming.filter(
    (other) => has(other) && other.follower && other.follower.moment > at && has(other.follower),
  );
  const kept = [...moment.own.filter((other) => other !== item && has(other)), ...held];
  const told = reasonFor(item, kept, !item.source || has(item.source), handOf(frame.target));
  if (told.reason !== 'technique cannot be kept' || (item.source && !has(item.source))) return told;
  if (frame.slide || holds([item, ...kept], frame)) return told;
  const detail = `${handWords(frame)} cannot hold it together with the other notes of the moment.`;
  return { id: item.note.id, reason: 'out of reach', detail };
}

function handWords({ caps, thumb }: Frame): string {
  const most = caps.fingers ?? 4;
  const fingers =
    most === 1
      ? 'One finger'
      : most >= 4
        ? 'Four fingers'
        : `${most === 2 ? 'Two' : most === 3 ? 'Three' : 'No'} fingers`;
  const barred = caps.barres === false ? ' without a barre' : '';
  return `${fingers}${thumb ? ' and the thumb' : ''}${barred}`;
}

/** Whether fingers can hold some notes at once, each somewhere. */
function holds(items: readonly Item[], frame: Frame): boolean {
  const stops: Stop[] = [];
  let taken = 0;
  let opens = 0;
  const choose = (position: number): boolean => {
    const item = items[position];
    if (!item) {
      let found = false;
      eachFingering(stops, opens, frame, () => (found = true));
      return found;
    }
    for (const place of item.places) {
      const bit = 1 << place.index;
      if (taken & bit) continue;
      taken |= bit;
      const stopped = place.stoppedFret !== undefined;
      if (place.stoppedFret !== undefined) stops.push({ index: place.index, fret: place.stoppedFret });
      else if (item.note.midi !== undefined) opens |= bit;
      const done = choose(position + 1);
      if (stopped) stops.pop();
      taken &= ~bit;
      opens &= ~bit;
      if (done) return true;
    }
    return false;
  };
  return choose(0);
}
