import { eachFingering, indexPosition, type Stop } from '../hand/fingering';
import { exact, type Frame } from '../hand/frame';
import { eachTerm } from '../hand/gripCost';
import type { HandState } from '../hand/handStates';

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
 */
export function shapeStates(shapes: readonly ShapeChoice[], frame: Frame): ShapeState[] {
  return shapes.flatMap((shape, at) => statesOf(shape, at, frame));
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
    let cost = exact(extra);
    eachTerm(grip, 'shape', frame, (name, amount, share) => {
      cost += exact(frame.k[name] * amount * share);
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
