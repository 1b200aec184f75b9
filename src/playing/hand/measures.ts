import type { HandConstantName } from './constants';
import { span } from './fingering';
import { eachTerm } from './gripCost';
import type { HandMeasures } from './handAnswer';
import { SLOTS } from './handLayer';
import { cutsOf, stepsOf } from './handPath';
import type { HandProblem } from './problem';
import { UNIT } from './frame';
import { whyHard, type Part } from './words';

/** What a player wants to know of a fingering. */
export function measuresOf(
  { frame, graph, moves }: HandProblem,
  way: readonly number[],
  secondsPerQuarter: number,
): HandMeasures {
  const steps = stepsOf(moves, way);
  let highestFret = 0;
  let openStrings = 0;
  let cutNotes = 0;
  let widest: HandMeasures['widestStretch'];
  let longest: HandMeasures['longestTravel'];
  let hardest = -1;
  graph.layers.forEach((layer, at) => {
    const state = layer.states[way[at] ?? -1];
    const moment = graph.moments[at];
    if (!state || !moment) return;
    const id = firstPlaced(at);
    state.own.forEach((place, i) => {
      if (!place) return;
      if (place.stoppedFret !== undefined) highestFret = Math.max(highestFret, place.fret);
      else if (moment.own[i]?.note.midi !== undefined && place.touched === undefined) openStrings++;
    });
    if (at > 0) cutNotes += cutsOf(graph, at, way[at - 1] ?? 0, way[at] ?? 0);
    if (id === undefined) return;
    const millimetres = span(state.grip.stops, frame);
    if (millimetres > (widest?.millimetres ?? 0)) widest = { millimetres, id };
    const travel = travelInto(at);
    if (travel > (longest?.millimetres ?? 0)) longest = { millimetres: travel, id };
    if (hardest < 0 || (steps[at] ?? 0) > (steps[hardest] ?? 0)) hardest = at;
  });
  const id = firstPlaced(hardest);
  return {
    highestFret,
    widestStretch: widest,
    longestTravel: longest,
    openStrings,
    cutNotes,
    hardest: id === undefined ? undefined : { cost: (steps[hardest] ?? 0) / UNIT, id, why: why(hardest) },
  };

  function firstPlaced(at: number): number | undefined {
    const state = graph.layers[at]?.states[way[at] ?? -1];
    const position = state?.own.findIndex((place) => place !== undefined) ?? -1;
    return graph.moments[at]?.own[position]?.note.id;
  }

  function travelInto(at: number): number {
    const from = graph.layers[at - 1]?.position[way[at - 1] ?? -1];
    const to = graph.layers[at]?.position[way[at] ?? -1];
    if (from === undefined || to === undefined) return 0;
    return Math.abs((frame.x[from] ?? 0) - (frame.x[to] ?? 0));
  }

  function why(at: number): string {
    const layer = graph.layers[at];
    const j = way[at] ?? -1;
    const state = layer?.states[j];
    if (!layer || !state) return '';
    const parts: Part[] = [];
    const add = (name: HandConstantName, amount: number, cost: number): void => {
      if (cost > 0) parts.push({ name, amount, cost });
    };
    eachTerm(state.grip, state.weighing, frame, (name, amount, share) =>
      add(name, amount, frame.k[name] * amount * share),
    );
    if (state.reached) add('reach', 1, frame.k.reach);
    const before = graph.layers[at - 1];
    const i = way[at - 1] ?? -1;
    let seconds = 0;
    if (before) {
      const table = moves.table(at);
      seconds = ((graph.moments[at]?.onset ?? 0) - (graph.moments[at - 1]?.onset ?? 0)) * secondsPerQuarter;
      const [from, to] = [before.position[i] ?? 0, layer.position[j] ?? 0];
      if (from !== to) {
        const free = before.down[i] !== 1;
        const shift = free ? table.freeShift : table.shift;
        add(free ? 'freeShift' : 'shift', 1, (shift + (table.travel[from * table.width + to] ?? 0)) / UNIT);
      }
      let [set, moved] = [0, 0];
      for (let slot = 0; slot < SLOTS; slot++) {
        const now = layer.fingers[j * SLOTS + slot] ?? 0;
        const was = before.fingers[i * SLOTS + slot] ?? 0;
        if (now === 0) continue;
        if (was === 0) set++;
        else if (was >> 16 !== now >> 16 || (was & now & 0xffff) === 0) moved++;
      }
      add('setDown', set, (set * table.setDown) / UNIT);
      add('moved', moved, (moved * table.moved) / UNIT);
      const cuts = cutsOf(graph, at, i, j);
      add('cut', cuts, (cuts * table.cut) / UNIT);
    }
    return whyHard(parts, { stretch: span(state.grip.stops, frame), travel: travelInto(at), seconds });
  }
}
