import { lossOf } from '../leaveOut';
import type { Item } from '../moments';
import type { Place } from '../places';
import { eachFingering, indexPosition, type Stop } from './fingering';
import { exact, THUMB, type Frame } from './frame';
import { eachTerm, type HeldGrip, type Weighing } from './gripCost';
import type { RefingerWeights } from './options';
import type { RingingMoment } from './ringing';

/** A node of the layered graph: what the hand does at one moment. */
export interface HandState {
  /** For each of the moment's own notes its place; undefined when it is left out. */
  readonly own: readonly (Place | undefined)[];
  readonly ownFingers: readonly number[];
  readonly grip: HeldGrip;
  readonly weighing: Weighing;
  /** Whether the index reaches a fret back or the little finger a fret up, out of its position. */
  readonly reached: boolean;
  /** Node cost in millionths. */
  readonly cost: number;
  /** Sum of frets, then notes away from the string they came from. */
  readonly tie: number;
  readonly loss: number;
  /** What it asks of the moment before, and what the moment after may ask of it; see `matches`. */
  readonly need: readonly number[];
  readonly out: readonly number[];
  /** How many entries of `need`, the first ones, come from joins. */
  readonly joined: number;
}

/** Asks nothing: the note was let go, or its join given up. */
export const ANYTHING = -1;
/** The note does not sound, or not any more. */
const GONE = 0;
/** Chords from here on are weighed as chords. */
const CHORD_NOTES = 4;
const FRET_TIE = 2 ** 20;

/** The notes of a moment that the moment before can say something of, in the order of `need` and `out`. */
export function carriedInto(moment: RingingMoment | undefined): readonly Item[] {
  return moment ? [...moment.through, ...moment.sources, ...moment.ringing] : [];
}

/** Natural harmonics are touched from a fret below the index to four above it. */
const TOUCH_BELOW = 1;
const TOUCH_ABOVE = 4;

/** All states of a moment with at most `most` of its own notes left out. */
export function handStatesOf(
  moment: RingingMoment,
  at: number,
  next: RingingMoment | undefined,
  frame: Frame,
  weights: RefingerWeights,
  most: number,
  symmetric: boolean,
): HandState[] {
  const states: HandState[] = [];
  const { own, through, sources, ringing } = moment;
  const carried = carriedInto(next);
  const held: readonly Item[] = [...through, ...ringing];
  const heldPlaces: (Place | undefined)[] = held.map(() => undefined);
  const places: (Place | undefined)[] = own.map(() => undefined);
  const pitched = [...own, ...held].filter(({ note }) => note.midi !== undefined).length;
  const strummed = own.filter(({ note }) => note.midi !== undefined).length >= CHORD_NOTES;
  const weighing: Weighing = pitched < CHORD_NOTES ? 'line' : strummed ? 'strummed chord' : 'chord';
  const widest = frame.slide ? 0 : frame.thumb ? Infinity : Math.min(frame.span, frame.widest);
  let taken = 0;
  let left = 0;

  const chooseHeld = (position: number, low: number, high: number): void => {
    const item = held[position];
    if (!item) return chooseOwn(0, low, high);
    for (const place of item.places)
      take(place, low, high, (l, h) => {
        heldPlaces[position] = place;
        chooseHeld(position + 1, l, h);
        heldPlaces[position] = undefined;
      });
    // What rings may be let go; what a join holds only where notes may be left out.
    if (position >= through.length || most > 0) chooseHeld(position + 1, low, high);
  };

  const chooseOwn = (position: number, low: number, high: number): void => {
    const item = own[position];
    if (!item) return finish();
    const twin =
      symmetric && position > 0 && alike(own[position - 1], item) ? places[position - 1] : undefined;
    for (const place of item.places) {
      if (twin && place.index < twin.index) continue;
      take(place, low, high, (l, h) => {
        places[position] = place;
        chooseOwn(position + 1, l, h);
        places[position] = undefined;
      });
    }
    if (left < most) {
      left++;
      chooseOwn(position + 1, low, high);
      left--;
    }
  };

  const take = (place: Place, low: number, high: number, go: (low: number, high: number) => void): void => {
    const bit = 1 << place.index;
    if (taken & bit) return;
    let [l, h] = [low, high];
    if (place.stoppedFret !== undefined) {
      l = Math.min(low, place.stoppedFret);
      h = Math.max(high, place.stoppedFret);
      if ((frame.x[h] ?? 0) - (frame.x[l] ?? 0) > widest + 1e-6) return;
    }
    taken |= bit;
    go(l, h);
    taken &= ~bit;
  };

  const alike = (a: Item | undefined, b: Item): boolean =>
    a?.placesKey === b.placesKey &&
    !a.source &&
    !b.source &&
    !a.follower &&
    !b.follower &&
    a.note.end === b.note.end;

  const finish = (): void => {
    const stops: Stop[] = [];
    const sounding: {
      readonly item: Item;
      readonly place: Place;
      readonly stop: number;
      readonly own: number;
    }[] = [];
    let opens = 0;
    let struck = 0;
    let busy = 0;
    let tie = 0;
    let touchLow = frame.lowest;
    let touchHigh = frame.highest;
    let asked = 0;
    const note = (item: Item, place: Place, ownAt: number): void => {
      const bit = 1 << place.index;
      busy |= bit;
      let stop = -1;
      if (place.stoppedFret !== undefined) {
        stop = stops.length;
        stops.push({ index: place.index, fret: place.stoppedFret });
      } else if (item.note.midi !== undefined) opens |= bit;
      sounding.push({ item, place, stop, own: ownAt });
      if (ownAt < 0) return;
      struck |= bit;
      tie +=
        (place.touched ?? place.fret) * FRET_TIE + (frame.strings - place.index === item.note.string ? 0 : 1);
      if (place.stoppedFret !== undefined)
        asked += (weights.moreOpen ?? 0) + (weights.lowOnNeck ?? 0) * (place.stoppedFret - frame.zero);
      else if (place.touched !== undefined) {
        touchLow = Math.max(touchLow, Math.min(frame.highest, Math.floor(place.touched) - TOUCH_ABOVE));
        touchHigh = Math.min(touchHigh, Math.max(frame.lowest, Math.ceil(place.touched) + TOUCH_BELOW));
      }
    };
    held.forEach((item, position) => {
      const place = heldPlaces[position];
      if (place) note(item, place, -1);
    });
    own.forEach((item, position) => {
      const place = places[position];
      if (place) note(item, place, position);
    });
    const loss = left === 0 ? 0 : lossOf(moment.moment, places);
    const ownPlaces = [...places];

    const codeOf = (item: Item, fingers: readonly number[]): number => {
      for (const one of sounding) {
        if (one.item !== item) continue;
        if (item.follower && item.follower.moment === at + 1) return 1 + one.place.index;
        return (item.places.indexOf(one.place) + 1) * 8 + (one.stop < 0 ? 0 : (fingers[one.stop] ?? 0));
      }
      return GONE;
    };
    const needOf = (fingers: readonly number[]): number[] => {
      const need: number[] = [];
      const heldCode = (item: Item): number => {
        const one = sounding.find((other) => other.item === item && other.own < 0);
        if (!one) return ANYTHING;
        return (item.places.indexOf(one.place) + 1) * 8 + (one.stop < 0 ? 0 : (fingers[one.stop] ?? 0));
      };
      for (const item of through) need.push(heldCode(item));
      for (const item of sources) {
        const follower = own.findIndex((other) => other === item.follower);
        const place = ownPlaces[follower];
        need.push(place ? 1 + place.index : ANYTHING);
      }
      for (const item of ringing) need.push(heldCode(item));
      return need;
    };

    const push = (fingers: readonly number[], position: number, reached: boolean): void => {
      const grip = { stops, fingers, opens, struck, busy, position };
      let cost = exact(asked);
      eachTerm(grip, weighing, frame, (name, amount, share) => {
        cost += exact(frame.k[name] * amount * share);
      });
      if (reached) cost += exact(frame.k.reach);
      const ownFingers: number[] = own.map(() => 0);
      for (const one of sounding)
        if (one.own >= 0 && one.stop >= 0) ownFingers[one.own] = fingers[one.stop] ?? 0;
      states.push({
        own: ownPlaces,
        ownFingers,
        grip,
        weighing,
        reached,
        cost,
        tie,
        loss,
        need: needOf(fingers),
        out: carried.map((item) => codeOf(item, fingers)),
        joined: through.length + sources.length,
      });
    };

    if (stops.length === 0) {
      for (let position = touchLow; position <= Math.max(touchLow, touchHigh); position++)
        push([], position, false);
      return;
    }
    const [only] = stops;
    if (frame.slide && only) {
      const bar = stops.map(({ index }) => index);
      const [from, to] = [Math.min(...bar), Math.max(...bar)];
      for (let index = from + 1; index < to; index++) if ((opens >> index) & 1) return;
      push(
        stops.map(() => 1),
        only.fret,
        false,
      );
      return;
    }
    eachFingering(stops, opens, frame, (used) => {
      const fingers = [...used];
      const position = indexPosition(stops, fingers, frame) ?? frame.lowest;
      push(fingers, position, false);
      if (!only || stops.length > 1) return;
      if (fingers[0] === 1 && only.fret < frame.highest) push(fingers, only.fret + 1, true);
      if (fingers[0] === 4 && only.fret - 4 >= frame.lowest) push(fingers, only.fret - 4, true);
    });
  };

  chooseHeld(0, Infinity, -Infinity);
  return states;
}

/** The finger of a note, as it is told to the player. */
export function fingerName(finger: number): 0 | 1 | 2 | 3 | 4 | 'T' {
  switch (finger) {
    case 1:
    case 2:
    case 3:
    case 4:
      return finger;
    case THUMB:
      return 'T';
    default:
      return 0;
  }
}
