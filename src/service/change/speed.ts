import type { PassageNote } from '../../playing/passage';
import { chainsOf, momentsIn } from './chains';
import { isInner, type Voice } from './voices';

/** What a limit of speed asks: the inner notes that go; or the note at which tune or bass alone is too fast. */
export type Slowed =
  | { readonly drop: ReadonlySet<number> }
  | { readonly tooFast: { readonly id: number; readonly voice: 'tune' | 'bass'; readonly speed: number } };

/** Times are sums of fractions of a quarter note in binary. */
const SLACK = 1e-6;

/**
 * The inner notes to leave out so that nothing follows faster than a limit. Tune and bass stay, each of which must keep
 * to the limit by itself.
 * @param speed most notes a second
 */
export function slowed(
  notes: readonly PassageNote[],
  voices: ReadonlyMap<number, Voice>,
  speed: number,
  secondsPerQuarter: number,
): Slowed {
  const least = 1 / speed / secondsPerQuarter - SLACK;
  const moments = momentsIn(notes);
  for (const voice of ['tune', 'bass'] as const) {
    let last: number | undefined;
    for (const moment of moments) {
      const own = moment.find(({ id }) => voices.get(id)?.[voice]);
      if (!own) continue;
      const gap = last === undefined ? Infinity : own.onset - last;
      if (gap < least) {
        const itself = Math.ceil((1 / (gap * secondsPerQuarter)) * 10 - SLACK) / 10;
        return { tooFast: { id: own.id, voice, speed: itself } };
      }
      last = own.onset;
    }
  }
  const chains = chainsOf(notes);
  const mayGo = ({ id }: PassageNote): boolean =>
    (chains.get(id) ?? [id]).every((other) => isInner(voices.get(other)));
  const drop = new Set<number>();
  const stays = moments.map((moment) => !moment.every(mayGo));
  let last = -Infinity;
  moments.forEach((moment, at) => {
    const onset = moment[0]?.onset ?? 0;
    if (stays[at]) {
      last = onset;
      return;
    }
    const next = moments.find((_, later) => later > at && stays[later])?.[0]?.onset ?? Infinity;
    if (onset - last >= least && next - onset >= least) {
      last = onset;
      return;
    }
    for (const { id } of moment) for (const other of chains.get(id) ?? [id]) drop.add(other);
  });
  return { drop };
}
