import { momentsOf } from '../moments';
import type { PassageNote, Placement, Unplaced } from '../passage';
import type { Target } from '../target';
import { frameOf, type Frame } from './frame';
import { handGraph, type HandGraph } from './handLayers';
import { movesOf, type Moves } from './handPath';
import { handPlaceFinder } from './handPlaces';
import type { HandOptions } from './options';
import { ringingMoments } from './ringing';

/** A passage ready to be searched: the inner interface for any search over the same costs. */
export interface HandProblem {
  readonly frame: Frame;
  readonly graph: HandGraph;
  readonly moves: Moves;
  /** Notes with no place whatever the others do. */
  readonly rejected: readonly Unplaced[];
}

/**
 * Builds the layered graph of a passage on a target. `graph.layers` hold the node costs, `moves.table` with `moveCost`
 * what lies between them.
 * @param only fixes places beforehand, by note id; notes without one have none
 */
export function handProblem(
  notes: readonly PassageNote[],
  target: Target,
  options: HandOptions,
  only?: ReadonlyMap<number, Placement>,
): HandProblem {
  const frame = frameOf(target, options);
  const { moments, rejected } = momentsOf(notes, handPlaceFinder(target, options, only));
  const graph = handGraph(ringingMoments(moments), frame, options.weights ?? {}, only === undefined);
  return { frame, graph, moves: movesOf(graph, options.secondsPerQuarter), rejected };
}
