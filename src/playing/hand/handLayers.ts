import { ONE_NOTE } from '../leaveOut';
import type { Item } from '../moments';
import { handLayer, matchesOf, type HandLayer, type Match } from './handLayer';
import { carriedInto, handStatesOf, type HandState } from './handStates';
import type { Frame } from './frame';
import type { RefingerWeights } from './options';
import type { RingingMoment } from './ringing';

/** The layered graph of a passage: one layer a moment, none of them empty. */
export interface HandGraph {
  readonly frame: Frame;
  readonly moments: readonly RingingMoment[];
  readonly layers: readonly HandLayer[];
  /** Which states of a layer may follow which of the one before; of the first layer there is nothing to ask. */
  matches(at: number): readonly (readonly Match[])[];
}

/**
 * Builds the graph with as few notes left out as the hard rules allow, and of those ways only the ones that lose least
 * (see `lossOf`); so every path through it loses as little as can be, and the search need look at costs alone. Moments
 * linked by joins form a chain; whether a chain can be played is its own affair, since the hand can go anywhere and
 * what rings can be let go.
 */
export function handGraph(
  moments: readonly RingingMoment[],
  frame: Frame,
  weights: RefingerWeights,
  symmetric: boolean,
): HandGraph {
  const memo = new Map<string, HandLayer>();
  let count = 0;
  const make = (states: readonly HandState[]): HandLayer => handLayer(count++, states);
  const statesAt = (at: number, most: number): HandState[] => {
    const moment = moments[at];
    return moment ? handStatesOf(moment, at, moments[at + 1], frame, weights, most, symmetric) : [];
  };
  const build = (at: number): HandLayer => {
    const key = memoKey(moments, at);
    const old = memo.get(key);
    if (old) return old;
    const layer = make(statesAt(at, 0));
    memo.set(key, layer);
    return layer;
  };
  const lossy = new Map<string, HandLayer>();
  const layers: HandLayer[] = [];
  for (const chain of chainsOf(moments)) {
    let built = chain.map(build);
    const [alone] = chain;
    if (chain.length === 1 && alone !== undefined) {
      const [layer] = built;
      if (layer && layer.size === 0) {
        const key = memoKey(moments, alone);
        const old = lossy.get(key) ?? make(leastLoss(moments, alone, statesAt));
        lossy.set(key, old);
        built = [old];
      }
      layers.push(...built);
      continue;
    }
    const notes = chain.reduce((sum, at) => sum + (moments[at]?.own.length ?? 0), 0);
    for (let most = 1; most <= notes && fewestLost(built) >= most; most++) {
      built = chain.map((at) => make(statesAt(at, most)));
    }
    layers.push(...prunedToLeastLoss(built, make));
  }
  const known = new Map<number, readonly (readonly Match[])[]>();
  return {
    frame,
    moments,
    layers,
    matches(at) {
      const [before, layer] = [layers[at - 1], layers[at]];
      if (!before || !layer) return [];
      const key = before.id * 2 ** 26 + layer.id;
      const old = known.get(key);
      if (old) return old;
      const found = matchesOf(before, layer);
      known.set(key, found);
      return found;
    },
  };
}

/** The states of a moment without joins that lose least, when it cannot be played whole. */
function leastLoss(
  moments: readonly RingingMoment[],
  at: number,
  statesAt: (at: number, most: number) => HandState[],
): HandState[] {
  const notes = moments[at]?.own.length ?? 0;
  for (let most = 1; most <= notes; most++) {
    const states = statesAt(at, most);
    if (states.length === 0) continue;
    const least = Math.min(...states.map(({ loss }) => loss));
    return states.filter(({ loss }) => loss === least);
  }
  return statesAt(at, notes);
}

/** Indices of moments, in runs that no join crosses. */
function chainsOf(moments: readonly RingingMoment[]): number[][] {
  const chains: number[][] = [];
  moments.forEach(({ through, sources }, at) => {
    const last = chains.at(-1);
    if (last && through.length + sources.length > 0) last.push(at);
    else chains.push([at]);
  });
  return chains;
}

/** The least loss with which each state can be reached. */
function lossesTo(layers: readonly HandLayer[]): number[][] {
  const all: number[][] = [];
  layers.forEach((layer, at) => {
    const before = layers[at - 1];
    const reached = all[at - 1];
    if (!before || !reached) {
      all.push(layer.states.map(({ loss }) => loss));
      return;
    }
    const byOut = leastBy(before.out, reached, before.outs.length);
    const byNeed = matchesOf(before, layer).map((outs) =>
      Math.min(Infinity, ...outs.map(({ out }) => byOut[out] ?? Infinity)),
    );
    all.push(layer.states.map(({ loss }, i) => loss + (byNeed[layer.need[i] ?? 0] ?? Infinity)));
  });
  return all;
}

function fewestLost(layers: readonly HandLayer[]): number {
  return Math.floor(Math.min(Infinity, ...(lossesTo(layers).at(-1) ?? [])) / ONE_NOTE);
}

/**
 * Keeps the states on ways that lose least, and binds them so that only such ways are left: a note let go matches any
 * state before it, so two states can each lie on a best way and yet lose more together. So each tells the loss up to
 * it, and asks of the one before the loss that its own way has.
 */
function prunedToLeastLoss(
  layers: readonly HandLayer[],
  make: (states: readonly HandState[]) => HandLayer,
): HandLayer[] {
  const to = lossesTo(layers);
  const least = Math.min(Infinity, ...(to.at(-1) ?? []));
  if (least === 0) return [...layers];
  let onward: number[] = (layers.at(-1)?.states ?? []).map(() => 0);
  const kept: HandLayer[] = [];
  for (let at = layers.length - 1; at >= 0; at--) {
    const layer = layers[at];
    if (!layer) break;
    const before = layers[at - 1];
    const good = layer.states.flatMap((state, i) => {
      const upTo = to[at]?.[i] ?? Infinity;
      if (upTo + (onward[i] ?? Infinity) !== least) return [];
      const need = before ? [...state.need, upTo - state.loss] : state.need;
      return [{ ...state, need, out: [...state.out, upTo] }];
    });
    kept.unshift(make(good));
    if (!before) break;
    const byNeed = leastBy(
      layer.need,
      layer.states.map(({ loss }, i) => loss + (onward[i] ?? Infinity)),
      layer.needs.length,
    );
    const byOut: number[] = new Array<number>(before.outs.length).fill(Infinity);
    matchesOf(before, layer).forEach((outs, need) => {
      for (const { out } of outs) byOut[out] = Math.min(byOut[out] ?? Infinity, byNeed[need] ?? Infinity);
    });
    onward = Array.from(before.out, (out) => byOut[out] ?? Infinity);
  }
  return kept;
}

function leastBy(group: Int32Array, values: readonly number[], count: number): number[] {
  const least = new Array<number>(count).fill(Infinity);
  group.forEach((which, i) => {
    least[which] = Math.min(least[which] ?? Infinity, values[i] ?? Infinity);
  });
  return least;
}

/** Moments with equal keys have equal states: a melody has some twenty different moments, not a thousand. */
function memoKey(moments: readonly RingingMoment[], at: number): string {
  const moment = moments[at];
  if (!moment) return '';
  const here: readonly Item[] = [...moment.own, ...moment.through, ...moment.sources, ...moment.ringing];
  const own = moment.own.map(
    (item) =>
      `${item.placesKey}/${item.note.string}/${item.source ? here.indexOf(item.source) : ''}${item.follower ? 'f' : ''}`,
  );
  const key = (items: readonly Item[]): string => items.map(({ placesKey }) => placesKey).join(' ');
  const next = moments[at + 1];
  const out = carriedInto(next).map(
    (item) => `${here.indexOf(item)}${item.follower?.moment === at + 1 ? 's' : ''}`,
  );
  const twins = moment.own
    .map((item, i) => (item.note.end === moment.own[i - 1]?.note.end ? '=' : ''))
    .join('.');
  return [
    own.join(','),
    key(moment.through),
    key(moment.sources),
    key(moment.ringing),
    out.join(','),
    twins,
    lossKey(moment),
  ].join(';');
}

/** Pitches that have no place count in what is lost: which voices are outer. */
function lossKey(moment: RingingMoment): string {
  return moment.moment.pitches.length === moment.own.length ? '' : moment.moment.pitches.join(' ');
}
