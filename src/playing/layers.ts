import { ONE_NOTE } from './leaveOut';
import { statesOf, type Hand, type State } from './grips';
import { layerOf, type Layer } from './search';
import type { Costs } from './costs';
import type { Item, Moment } from './moments';

/**
 * Builds the layered graph. Moments linked by joins form a chain; chains meet only through the hand, which can go
 * anywhere, so whether a chain can be played is its own affair. A chain that cannot is built again with the fewest notes
 * left out that let it; all others are built with none left out.
 */
export function layersOf(moments: readonly Moment[], hand: Hand, costs: Costs): Layer[] {
  const memo = new Map<string, Layer>();
  const build = (at: number): Layer => {
    const moment = moments[at];
    if (!moment) return layerOf([]);
    const key = memoKey(moment, at, moments[at + 1]);
    const old = memo.get(key);
    if (old) return old;
    const layer = layerOf(statesOf(moment, at, moments[at + 1], hand, costs, 0));
    memo.set(key, layer);
    return layer;
  };
  const layers: Layer[] = [];
  for (const chain of chainsOf(moments)) {
    let built = chain.map(build);
    const notes = chain.reduce((sum, at) => sum + (moments[at]?.own.length ?? 0), 0);
    for (let most = 1; most <= notes && fewestLost(built) >= most; most++) {
      built = chain.map((at, position) => {
        const moment = moments[at];
        const old = built[position];
        // More than all of a moment's notes and joins cannot be given up: then the layer stays as it is.
        const full = (moment?.own.length ?? 0) + (moments[at + 1]?.incoming.length ?? 0);
        if (!moment || (old && most > full)) return old ?? layerOf([]);
        return layerOf(statesOf(moment, at, moments[at + 1], hand, costs, most));
      });
    }
    layers.push(...built);
  }
  return layers;
}

/** Whether every note can be placed, hand and joins included. */
export function playable(moments: readonly Moment[], hand: Hand, costs: Costs): boolean {
  return chainsOf(moments).every(
    (chain) =>
      fewestLost(
        chain.map((at) => {
          const moment = moments[at];
          return layerOf(moment ? statesOf(moment, at, moments[at + 1], hand, costs, 0) : []);
        }),
      ) === 0,
  );
}

/** Indices of moments, in runs that no join crosses. */
function chainsOf(moments: readonly Moment[]): number[][] {
  const chains: number[][] = [];
  moments.forEach((moment, at) => {
    const last = chains.at(-1);
    if (last && moment.incoming.length > 0) last.push(at);
    else chains.push([at]);
  });
  return chains;
}

/** The least number of notes left out on a way through; Infinity when there is none. */
function fewestLost(layers: readonly Layer[]): number {
  let reached = new Map<string, number>([['', 0]]);
  for (const layer of layers) {
    const next = new Map<string, number>();
    for (const state of layer.states) {
      const before = reached.get(state.inKey);
      if (before === undefined) continue;
      const lost = before + countOf(state);
      if (lost < (next.get(state.outKey) ?? Infinity)) next.set(state.outKey, lost);
    }
    reached = next;
  }
  return Math.min(Infinity, ...reached.values());
}

function countOf(state: State): number {
  return Math.floor(state.loss / ONE_NOTE);
}

/** Moments with equal keys have equal states: a melody has some twenty different moments, not a thousand. */
function memoKey(moment: Moment, at: number, next: Moment | undefined): string {
  const name = (item: Item): string => {
    const own = moment.own.indexOf(item);
    return own >= 0 ? `o${own}` : `i${moment.incoming.indexOf(item)}`;
  };
  const own = moment.own.map(
    (item) => `${item.placesKey}/${item.note.string}/${item.source ? name(item.source) : ''}`,
  );
  const into = moment.incoming.map((item) => `${item.placesKey}${item.follower?.moment === at ? 's' : 'c'}`);
  const out = (next?.incoming ?? []).map(
    (item) => `${name(item)}${item.follower?.moment === at + 1 ? 's' : 'c'}`,
  );
  return `${own.join(',')};${into.join(',')};${out.join(',')}`;
}
