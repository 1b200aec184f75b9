import type { PassageNote, Placement, Unplaced } from '../passage';
import type { Item } from '../moments';
import type { Place } from '../places';
import type { Target } from '../target';
import { nextAlternative, type BarRange } from './alternatives';
import { UNIT } from './frame';
import type { Finger, HandAnswer } from './handAnswer';
import { bestPathOf, forward, type HandPath } from './handPath';
import { whyLeftOut } from './handReasons';
import { fingerName } from './handStates';
import { hardestAllowed } from './hardest';
import { measuresOf } from './measures';
import type { HandOptions } from './options';
import { handProblem, type HandProblem } from './problem';

export {
  HAND_CONSTANTS,
  withValues,
  type HandConstant,
  type HandConstantName,
  type HandConstants,
} from './constants';
export { handOptions, type HandCaps, type HandOptions, type RefingerWeights } from './options';
export type { Finger, HandAnswer, HandMeasures } from './handAnswer';

/**
 * Fingers a passage with the hand model, exactly: as few notes as possible are left out; among those answers the
 * fewest outer voices and then the fewest pitch classes are lost; among those the cost under `options.constants` is
 * least, or with `objective: 'hardest'` the hardest step of each group is as easy as it can be and then the cost is
 * least. Ties go to the lowest sum of frets, then to the most notes on the string they came from.
 *
 * A note sounds until its `end`: earlier notes that should still sound are held, or let go at the price `cut`.
 * @returns the best answer, then alternatives, each the least-cost one that plays some one bar in another position
 *   and on other places than all before it; fewer than asked for where there are no more
 */
export function playPassage(
  notes: readonly PassageNote[],
  target: Target,
  options: HandOptions,
): readonly HandAnswer[] {
  const problem = handProblem(notes, target, options);
  return solve(problem, options, Math.max(1, options.alternatives)).map((path) =>
    answerOf(problem, path, options),
  );
}

/**
 * The player's own placement under the same table, with the fingers that cost least for it; undefined when it breaks
 * a hard rule or leaves a note out. It is never cheaper than the first answer of `playPassage` under the same options
 * and objective `total`.
 */
export function measurePlacement(
  notes: readonly PassageNote[],
  placements: readonly Placement[],
  target: Target,
  options: HandOptions,
): HandAnswer | undefined {
  const problem = handProblem(notes, target, options, new Map(placements.map((place) => [place.id, place])));
  const [path] = solve(problem, options, 1);
  if (!path) return undefined;
  const answer = answerOf(problem, path, options);
  return answer.unplaced.length > 0 ? undefined : answer;
}

function solve(problem: HandProblem, options: HandOptions, wanted: number): HandPath[] {
  const { moves } = problem;
  const most =
    options.objective === 'hardest' ? hardestAllowed(moves, groupsOf(problem, options)) : undefined;
  const ahead = forward(moves, most);
  const best = bestPathOf(ahead);
  if (!best) throw new Error('The layered graph has no path although every note may be left out.');
  const paths = [best];
  const bars = wanted > 1 ? barsOf(problem, options.barOf) : [];
  while (paths.length < wanted) {
    const ways = paths.map(({ states }) => states);
    const next = nextAlternative(moves, ahead, bars, ways, most);
    if (!next) break;
    paths.push(next);
  }
  return paths;
}

/** The group of each layer: its own first note's, else that of the layer before. */
function groupsOf({ graph }: HandProblem, { groupOf }: HandOptions): number[] {
  let group = 0;
  return graph.moments.map(({ own }) => {
    const [first] = own;
    if (groupOf && first) group = groupOf(first.note.id);
    return group;
  });
}

/** Runs of layers that begin in one bar. */
function barsOf({ graph }: HandProblem, barOf: (id: number) => number): BarRange[] {
  const bars: [number, number][] = [];
  let bar: number | undefined;
  graph.moments.forEach(({ own }, at) => {
    const [first] = own;
    const here = first ? barOf(first.note.id) : bar;
    const last = bars.at(-1);
    if (last && here === bar) last[1] = at;
    else bars.push([at, at]);
    bar = here;
  });
  return bars;
}

function answerOf(problem: HandProblem, path: HandPath, options: HandOptions): HandAnswer {
  const { frame, graph, moves, rejected } = problem;
  const chosen = new Map<Item, Place>();
  const fingers = new Map<number, Finger>();
  const positions = new Map<number, number>();
  const placements: Placement[] = [];
  graph.moments.forEach(({ own }, at) => {
    const state = graph.layers[at]?.states[path.states[at] ?? -1];
    own.forEach((item, i) => {
      const place = state?.own[i];
      if (!state || !place) return;
      const { id } = item.note;
      chosen.set(item, place);
      const plain = { id, string: frame.strings - place.index, fret: place.fret };
      placements.push(place.touched === undefined ? plain : { ...plain, touched: place.touched });
      fingers.set(id, fingerName(state.ownFingers[i] ?? 0));
      positions.set(id, state.grip.position - frame.zero);
    });
  });
  const unplaced: Unplaced[] = [...rejected];
  graph.moments.forEach(({ own, moment }, at) => {
    for (const item of own) if (!chosen.has(item)) unplaced.push(whyLeftOut(item, moment, at, chosen, frame));
  });
  return {
    placements,
    unplaced,
    cost: path.cost / UNIT,
    states: graph.layers.reduce((sum, { size }) => sum + size, 0),
    edges: moves.edges,
    fingers,
    positions,
    measures: measuresOf(problem, path.states, options.secondsPerQuarter),
  };
}
