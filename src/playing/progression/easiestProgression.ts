import { frameOf, UNIT, type Frame } from '../hand/frame';
import type { Finger } from '../hand/handAnswer';
import { handLayer, matchesOf, type HandLayer } from '../hand/handLayer';
import type { HandGraph } from '../hand/handLayers';
import { bestPathOf, forward, movesOf, stepsOf } from '../hand/handPath';
import { fingerName } from '../hand/handStates';
import type { HandOptions } from '../hand/options';
import type { RingingMoment } from '../hand/ringing';
import type { Target } from '../target';
import { shapeStates, type ShapeChoice, type ShapeState } from './shapeStates';

/** A chord of a progression with the shapes it may take. */
export interface ProgressionChord {
  /** The same list for the same chord saves work. */
  readonly shapes: readonly ShapeChoice[];
  /** Time there is to come here from the chord before, 0 or more. */
  readonly seconds: number;
}

/** How one chord of a progression is played. */
export interface ChosenShape {
  /** Index among the chord's shapes. */
  readonly shape: number;
  /** Low-placed string first; 0 for open strings and those that do not sound. */
  readonly fingers: readonly Finger[];
  /** Fret of the index finger, as frets are written; where nothing is stopped, where the hand waits. */
  readonly position: number;
  /** The shape, what it lacks, and the move to it. */
  readonly cost: number;
}

export interface ProgressionAnswer {
  /** One for each chord; undefined where no hand holds any of its shapes. */
  readonly chosen: readonly (ChosenShape | undefined)[];
  /** The least there is, exactly, in the unit of the hand's table. */
  readonly cost: number;
}

/**
 * Chooses a shape and its fingers for each chord so that the sum of all shapes and of all moves between them is least,
 * exactly, by dynamic programming under the hand's own table. Of equal sums the one with the lower frets is taken. A
 * chord that has no shape is passed over: the hand goes from the one before it to the one behind it.
 * @example easiestProgression([{ shapes: shapesOfD, seconds: 0 }, { shapes: shapesOfG, seconds: 0.6 }], target, handOptions())
 */
export function easiestProgression(
  chords: readonly ProgressionChord[],
  target: Target,
  options: HandOptions,
): ProgressionAnswer {
  const frame = frameOf(target, options);
  const known = new Map<readonly ShapeChoice[], Played>();
  const layers: HandLayer[] = [];
  const states: (readonly ShapeState[])[] = [];
  const moments: RingingMoment[] = [];
  const played: number[] = [];
  let onset = 0;
  const leastSeconds = Math.min(...chords.slice(1).map(({ seconds }) => seconds));
  chords.forEach(({ shapes, seconds }, at) => {
    let own = known.get(shapes);
    if (!own) known.set(shapes, (own = playedOf(known.size, shapes, frame, leastSeconds)));
    // The search asks for the time from moment to moment; a chord passed over leaves its time to the next.
    onset += seconds;
    if (own.layer.size === 0) return;
    layers.push(own.layer);
    states.push(own.states);
    moments.push(momentAt(onset));
    played.push(at);
  });
  const moves = movesOf(graphOf(frame, layers, moments), 1);
  const path = bestPathOf(forward(moves));
  const chosen: (ChosenShape | undefined)[] = chords.map(() => undefined);
  if (!path) return { chosen, cost: 0 };
  const steps = stepsOf(moves, path.states);
  path.states.forEach((state, layer) => {
    const found = states[layer]?.[state];
    const at = played[layer];
    if (found && at !== undefined) chosen[at] = chosenOf(found, (steps[layer] ?? 0) / UNIT, frame);
  });
  return { chosen, cost: path.cost / UNIT };
}

/** A chord's states, as the search takes them. */
interface Played {
  readonly states: readonly ShapeState[];
  readonly layer: HandLayer;
}

function playedOf(id: number, shapes: readonly ShapeChoice[], frame: Frame, leastSeconds: number): Played {
  const states = shapeStates(shapes, frame, leastSeconds);
  return { states, layer: handLayer(id, states) };
}

function graphOf(frame: Frame, layers: readonly HandLayer[], moments: readonly RingingMoment[]): HandGraph {
  return {
    frame,
    moments,
    layers,
    matches(at) {
      const [before, layer] = [layers[at - 1], layers[at]];
      return before && layer ? matchesOf(before, layer) : [];
    },
  };
}

/** Strummed chords ask nothing of each other: no note is joined or held. */
function momentAt(onset: number): RingingMoment {
  const moment = { onset, own: [], incoming: [], pitches: [] };
  return { onset, own: [], through: [], sources: [], ringing: [], moment };
}

function chosenOf({ shape, grip }: ShapeState, cost: number, frame: Frame): ChosenShape {
  const fingers: Finger[] = Array.from({ length: frame.strings }, () => 0);
  grip.stops.forEach(({ index }, i) => (fingers[index] = fingerName(grip.fingers[i] ?? 0)));
  return { shape, fingers, position: grip.position - frame.zero, cost };
}
