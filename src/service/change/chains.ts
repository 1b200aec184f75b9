import type { PassageNote } from '../../playing/passage';

/** Notes that techniques join, as lists of ids in the order of time; a note that is joined to none is a list of its own. */
export function chainsOf(notes: readonly PassageNote[]): ReadonlyMap<number, readonly number[]> {
  const chains = new Map<number, number[]>();
  const inOrder = [...notes].sort((a, b) => a.onset - b.onset);
  for (const { id, joinedTo } of inOrder) {
    const chain = joinedTo === undefined ? undefined : chains.get(joinedTo);
    if (chain) chain.push(id);
    chains.set(id, chain ?? [id]);
  }
  return chains;
}

/** Notes that begin together, lists in the order of time. */
export function momentsIn(notes: readonly PassageNote[]): readonly (readonly PassageNote[])[] {
  const moments = new Map<number, PassageNote[]>();
  for (const note of notes) {
    const key = Math.round(note.onset * 1e9);
    const moment = moments.get(key);
    if (moment) moment.push(note);
    else moments.set(key, [note]);
  }
  return [...moments].sort(([a], [b]) => a - b).map(([, moment]) => moment);
}
