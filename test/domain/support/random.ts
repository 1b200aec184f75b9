/** Random numbers that come again for the same seed, for tests that look at more cases than fast-check could keep. */
export interface Random {
  /** A whole number from 0 to `below` − 1. */
  below(below: number): number;
  pick<T>(items: readonly [T, ...T[]]): T;
  /** Whether something with this chance happens. */
  chance(chance: number): boolean;
}

/** The generator mulberry32 (public domain, Tommy Ettinger): 32 bits of state, good enough to choose test cases. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 0x1_0000_0000;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return {
    below,
    pick: (items) => items[below(items.length)] ?? items[0],
    chance: (chance) => next() < chance,
  };
}
