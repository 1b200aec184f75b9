import type { PassageNote, Unplaced } from './passage';
import type { Place, Places } from './places';

/** A note that can be placed by itself, with its ties in time. */
export interface Item {
  readonly note: PassageNote;
  readonly places: readonly Place[];
  /** Stands for `places` in memo keys: equal numbers, equal places. */
  readonly placesKey: number;
  /** Index of the moment at which it begins. */
  readonly moment: number;
  /** The earlier note whose string it must share. */
  source: Item | undefined;
  /** The later note that must share its string; at most one, since a second one is joined to the first. */
  follower: Item | undefined;
}

/** Notes that begin together, and earlier ones that a join holds up to here or through here. */
export interface Moment {
  readonly onset: number;
  /** Lowest pitch first, muted strokes last. */
  readonly own: readonly Item[];
  /** Earlier notes whose follower begins here or later. */
  readonly incoming: readonly Item[];
  /** Pitches of all notes of the moment, also of those that have no place at all; undefined for muted strokes. */
  readonly pitches: readonly (number | undefined)[];
}

export interface Moments {
  readonly moments: readonly Moment[];
  /** Notes with no place whatever the others do. */
  readonly rejected: readonly Unplaced[];
}

const TOGETHER = 1e-9;

/** Sorts a passage into moments. The order in which the notes were given does not matter. */
export function momentsOf(
  notes: readonly PassageNote[],
  find: (note: PassageNote) => { readonly found: Places; readonly key: number },
): Moments {
  const sorted = [...notes].sort(
    (a, b) =>
      a.onset - b.onset || (a.midi ?? Infinity) - (b.midi ?? Infinity) || b.string - a.string || a.id - b.id,
  );
  const groups: PassageNote[][] = [];
  for (const note of sorted) {
    const last = groups.at(-1);
    if (last?.[0] && note.onset - last[0].onset <= TOGETHER) last.push(note);
    else groups.push([note]);
  }
  const rejected: Unplaced[] = [];
  const known = new Map<number, { note: PassageNote; moment: number }>();
  groups.forEach((group, moment) => group.forEach((note) => known.set(note.id, { note, moment })));
  const items = new Map<number, Item>();
  const moments = groups.map((group, moment) => {
    const own: Item[] = [];
    for (const note of inPitchOrder(group)) {
      const { found, key } = find(note);
      if (found.why) {
        rejected.push({ id: note.id, ...found.why });
        continue;
      }
      const item = {
        note,
        places: found.places,
        placesKey: key,
        moment,
        source: undefined,
        follower: undefined,
      };
      const refusal = join(item, items, known);
      if (refusal === undefined) {
        items.set(note.id, item);
        own.push(item);
      } else {
        rejected.push({ id: note.id, reason: 'technique cannot be kept', detail: refusal });
      }
    }
    const onset = group[0]?.onset ?? 0;
    return { onset, own, incoming: [] as Item[], pitches: group.map((note) => note.midi) };
  });
  for (const item of items.values()) {
    if (!item.follower) continue;
    for (let at = item.moment + 1; at <= item.follower.moment; at++) moments[at]?.incoming.push(item);
  }
  return { moments, rejected };
}

/** Notes that fell into one group by tolerance are put in pitch order again. */
function inPitchOrder(group: readonly PassageNote[]): PassageNote[] {
  return [...group].sort(
    (a, b) => (a.midi ?? Infinity) - (b.midi ?? Infinity) || b.string - a.string || a.id - b.id,
  );
}

/** Ties an item to the note it is joined to; a sentence when that cannot be. */
function join(
  item: Item,
  items: ReadonlyMap<number, Item>,
  known: ReadonlyMap<number, { note: PassageNote; moment: number }>,
): string | undefined {
  const wanted = item.note.joinedTo;
  const earlier = wanted === undefined ? undefined : known.get(wanted);
  if (wanted === undefined || !earlier) return undefined;
  if (earlier.moment >= item.moment) return 'The note that it is joined to does not begin before it.';
  let source = items.get(wanted);
  if (!source) return 'The note that it is joined to has no place.';
  // Two notes joined to one share its string all the same: the later is tied to the earlier.
  while (source.follower && source.follower.moment < item.moment) source = source.follower;
  if (source.follower) return 'Another note is joined to the same note at the same moment.';
  item.source = source;
  source.follower = item;
  return undefined;
}
