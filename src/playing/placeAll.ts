import { layersOf } from './layers';
import { momentsOf, type Item, type Moment } from './moments';
import { neckOf } from './neck';
import { onlyAt, placesOf, type Place, type Places } from './places';
import { reasonFor } from './reasons';
import { bestPath } from './search';
import { thousandths, type Costs } from './costs';
import type { Hand, State } from './grips';
import type { Answer, PassageNote, Placement, Unplaced } from './passage';
import { stringCount, type Target } from './target';

/** The search behind `placePassage`; `only` fixes places beforehand, notes without one have none. */
export function placeAll(
  notes: readonly PassageNote[],
  target: Target,
  costs: Costs,
  only?: ReadonlyMap<number, Placement>,
): Answer {
  const hand = handOf(target);
  const { moments, rejected } = momentsOf(notes, placeFinder(target, hand, only));
  const layers = layersOf(moments, hand, costs);
  const path = bestPath(layers, moveCosts(hand, costs));
  if (!path) throw new Error('The layered graph has no path although every note may be left out.');
  const chosen = placesById(moments, path.states);
  const placements: Placement[] = [];
  const unplaced: Unplaced[] = [...rejected];
  moments.forEach((moment, at) => {
    for (const item of moment.own) {
      const place = chosen.get(item);
      if (place) placements.push(placementOf(item, place, hand.strings));
      else unplaced.push(explain(item, moment, at, chosen, hand));
    }
  });
  return {
    placements,
    unplaced,
    cost: path.cost / 1000,
    states: path.nodeCount,
    edges: path.edgeCount,
  };
}

/** What a target allows, in the units of the search. */
export function handOf(target: Target): Hand {
  return {
    neck: neckOf(target),
    reach: thousandths(target.reach),
    slide: target.slide,
    strings: stringCount(target),
  };
}

/** Finds the places of notes, once for all notes that are alike. */
export function placeFinder(
  target: Target,
  hand: Hand,
  only?: ReadonlyMap<number, Placement>,
): (note: PassageNote) => { readonly found: Places; readonly key: number } {
  const memo = new Map<string, { found: Places; key: number }>();
  return (note) => {
    const fixed = only?.get(note.id);
    const wanted = only ? `${fixed?.string} ${fixed?.fret} ${fixed?.touched}` : '';
    const stroke = note.midi === undefined ? note.string : '';
    const signature = [note.midi, stroke, note.need, note.reaches.join(' '), wanted].join(';');
    const old = memo.get(signature);
    if (old) return old;
    let found = placesOf(note, target, hand.neck);
    if (only && !found.why) found = onlyAt(found.places, fixed, hand.strings);
    const answer = { found, key: memo.size };
    memo.set(signature, answer);
    return answer;
  };
}

/** A table of what each move of the hand costs, thousandths of a millimetre. */
function moveCosts(hand: Hand, costs: Costs): (from: number, to: number) => number {
  const { neck } = hand;
  const width = neck.highestHand + 1;
  const table = new Float64Array(width * width);
  for (let from = 0; from < width; from++) {
    for (let to = 0; to < width; to++) {
      const millimetres = Math.abs(neck.position(to) - neck.position(from));
      table[from * width + to] = Math.round(costs.travel * millimetres);
    }
  }
  return (from, to) => table[from * width + to] ?? 0;
}

function placesById(moments: readonly Moment[], states: readonly State[]): Map<Item, Place> {
  const chosen = new Map<Item, Place>();
  moments.forEach((moment, at) => {
    moment.own.forEach((item, position) => {
      const place = states[at]?.places[position];
      if (place) chosen.set(item, place);
    });
  });
  return chosen;
}

function placementOf(item: Item, place: Place, strings: number): Placement {
  const plain = { id: item.note.id, string: strings - place.index, fret: place.fret };
  return place.touched === undefined ? plain : { ...plain, touched: place.touched };
}

function explain(
  item: Item,
  moment: Moment,
  at: number,
  chosen: ReadonlyMap<Item, Place>,
  hand: Hand,
): Unplaced {
  const has = (other: Item): boolean => chosen.has(other);
  const held = moment.incoming.filter(
    (other) => has(other) && other.follower && other.follower.moment > at && has(other.follower),
  );
  const kept = [...moment.own.filter((other) => other !== item && has(other)), ...held];
  return reasonFor(item, kept, !item.source || has(item.source), hand);
}
