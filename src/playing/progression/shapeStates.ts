import { eachFingering, indexPosition, type Stop } from '../hand/fingering';
import { exact, type Frame } from '../hand/frame';
import { eachTerm } from '../hand/gripCost';
import type { HandState } from '../hand/handStates';

/**
 * How much a shape weighs against a move, each as the hand's table has it. Chords change at the pace of beats, with time
 * to move, and a player takes the shape that is known for the chord: at 1 a C before a G is played x32050 for the sake of
 * a finger that stays, at 2 it is x32010 (common practice; engineering value).
 */
const SHAPE_WEIGHT = 2;

/** The reference of the travel term: a millimetre in a quarter of a second; see `hand/handLayer.ts`. */
const REFERENCE_SECONDS = 0.25;

/** One way to play a chord, before anyone thinks of the chords beside it. */
export interface ShapeChoice {
  /** As frets are written, 0 open; low-placed string first, null for a string that does not sound. */
  readonly frets: readonly (number | null)[];
  /** Cost on top of the hand's for what the shape lacks, 0 or more, in the hand table's unit. */
  readonly extra: number;
}

/** A node of the search: a shape with fingers on it. */
export interface ShapeState extends HandState {
  /** Index of the shape among those of its chord. */
  readonly shape: number;
}

/**
 * Every way to finger some shapes, each weighed in full as a shape by itself: a song is played in shapes that one knows,
 * and moves decide between those that are nearly as good. A shape that the neck does not have, or that no
 * hand holds, has none.
 * @param leastSeconds the least time that any move takes in this progression
 */
export function shapeStates(
  shapes: readonly ShapeChoice[],
  frame: Frame,
  leastSeconds: number,
): ShapeState[] {
  return shapes.flatMap((shape, at) => worthTrying(statesOf(shape, at, frame), frame, leastSeconds));
}

/**
 * Without fingerings that the cheapest one of the same shape can always stand in for: what they cost more is more than
 * any moves to it and from it can make good. Such a fingering saves at most the moving of each of its fingers and of the
 * other's, and a shift with its way along the neck, before and after.
 */
function worthTrying(states: readonly ShapeState[], frame: Frame, leastSeconds: number): ShapeState[] {
  const best = states.reduce<ShapeState | undefined>(
    (least, state) => (least && least.cost <= state.cost ? least : state),
    undefined,
  );
  if (!best) return [];
  const { k, x } = frame;
  const pace = (k.travel * REFERENCE_SECONDS) / Math.max(leastSeconds, k.shortest);
  const finger = Math.max(k.moved, k.setDown);
  const fingersOf = ({ grip }: ShapeState): number => new Set(grip.fingers).size;
  return states.filter((state) => {
    const [from, to] = [best.grip.position, state.grip.position];
    const way =
      from === to ? 0 : Math.max(k.shift, k.freeShift) + pace * Math.abs((x[from] ?? 0) - (x[to] ?? 0));
    const most = finger * (fingersOf(best) + fingersOf(state)) + 2 * way;
    return state.cost - best.cost <= exact(most) + 1;
  });
}

function statesOf({ frets, extra }: ShapeChoice, shape: number, frame: Frame): ShapeState[] {
  const { fingerboard } = frame.target;
  const stops: Stop[] = [];
  let opens = 0;
  let struck = 0;
  let tie = 0;
  for (const [index, fret] of frets.entries()) {
    if (fret === null) continue;
    const read = fingerboard.read(index, fret);
    if (!read.ok) return [];
    struck |= 1 << index;
    tie += fret;
    // Under a partial capo the capo's own number is the open string too.
    if (read.stopFret === fingerboard.absoluteFret(index, 0)) opens |= 1 << index;
    else stops.push({ index, fret: read.stopFret });
  }
  if (struck === 0) return [];
  const states: ShapeState[] = [];
  const push = (fingers: readonly number[], position: number): void => {
    const grip = { stops, fingers, opens, struck, busy: struck, position };
    let cost = exact(SHAPE_WEIGHT * extra);
    eachTerm(grip, 'shape', frame, (name, amount, share) => {
      cost += exact(SHAPE_WEIGHT * frame.k[name] * amount * share);
    });
    states.push({
      shape,
      own: [],
      ownFingers: fingers,
      grip,
      weighing: 'shape',
      reached: false,
      cost,
      tie,
      loss: 0,
      need: [],
      out: [],
      joined: 0,
    });
  };
  if (stops.length === 0) {
    // Under open strings the hand may be anywhere.
    for (let position = frame.lowest; position <= frame.highest; position++) push([], position);
  } else if (frame.slide) {
    if (underOneBar(stops, opens))
      push(
        stops.map(() => 1),
        stops[0]?.fret ?? frame.lowest,
      );
  } else {
    eachFingering(stops, opens, frame, (used) => {
      const fingers = [...used];
      push(fingers, indexPosition(stops, fingers, frame) ?? frame.lowest);
    });
  }
  return states;
}

/** Whether a straight bar stops all of it at one fret, with no open string below it. */
function underOneBar(stops: readonly Stop[], opens: number): boolean {
  const indices = stops.map(({ index }) => index);
  const [low, high] = [Math.min(...indices), Math.max(...indices)];
  for (let index = low + 1; index < high; index++) if ((opens >> index) & 1) return false;
  return stops.every(({ fret }) => fret === stops[0]?.fret);
}
