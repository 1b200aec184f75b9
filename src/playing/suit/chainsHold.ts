import { cutsOf } from './cheapest';
import type { Bound } from './bound';
import type { Kinds } from './kinds';
import type { States } from './states';

/**
 * Whether there is a way through all moments whatever it costs: each can be played by itself, but notes joined over
 * several must find a string that does for all.
 */
export function chainsHold(kinds: Kinds, bound: Bound, states: States): boolean {
  let before: ReadonlySet<number> | undefined;
  let outs: readonly (readonly number[])[] = [];
  for (const which of kinds.of) {
    const kind = kinds.kinds[which];
    if (!kind) return false;
    const after = new Set<number>();
    const asked = new Map<number, boolean>();
    for (const { from, to } of bound.blocksOf(which)) {
      for (let j = from; j < to; j++) {
        const number = states.need[j] ?? 0;
        let met: boolean | undefined = before ? asked.get(number) : true;
        if (met === undefined && before) {
          const wanted = kind.needs[number] ?? [];
          met = [...before].some((one) => cutsOf(wanted, outs[one] ?? [], kind.joined) >= 0);
          asked.set(number, met);
        }
        if (met === true) after.add(states.out[j] ?? 0);
      }
    }
    if (after.size === 0) return false;
    before = after;
    ({ outs } = kind);
  }
  return true;
}
