import type { System } from '../../notation/tabDocument';
import { systemOf } from '../typing/putFrets';
import { barListOf, printBars, type Bar, type BarList } from './barList';
import { countedSystem } from './countedSystem';
import { saysWhatItCameFrom } from './sameInBars';
import { tornMark } from './tornMark';

/** Systems laid anew: the text lines of each. */
export interface Relaid {
  readonly systems: readonly (readonly string[])[];
  /** Whether counts were written so that every note keeps its time. */
  readonly counted: boolean;
}

/**
 * Takes systems apart at their bar signs, arranges the bars anew, and reads the result before it is believed: every
 * bar has to say what it said. Where it does not, the counts are written first. A sentence says why nothing is done.
 * @param arrange gives one list of bars for each system that is to stand there
 */
export function relay(
  given: readonly System[],
  arrange: (lists: readonly BarList[]) => readonly BarList[] | string,
): Relaid | string {
  const plain = attempt(given, arrange);
  if (plain !== undefined) return typeof plain === 'string' ? plain : { systems: plain, counted: false };
  const under = given.map((system) => countedSystem(system) ?? system);
  const done = under.some((system, i) => system !== given[i]) ? attempt(under, arrange) : undefined;
  if (typeof done === 'string') return done;
  if (done) return { systems: done, counted: true };
  return 'Something would be read in another way than before, so nothing was done: write the count of these bars first.';
}

function attempt(
  systems: readonly System[],
  arrange: (lists: readonly BarList[]) => readonly BarList[] | string,
): readonly (readonly string[])[] | string | undefined {
  const lists: BarList[] = [];
  for (const system of systems) {
    const list = barListOf(system);
    if (typeof list === 'string') return list;
    lists.push(list);
  }
  const arranged = arrange(lists);
  if (typeof arranged === 'string') return arranged;
  const torn = arranged.map(tornMark).find((sentence) => sentence !== undefined);
  if (torn !== undefined) return torn;
  const printed = arranged.map(printBars);
  const [like] = systems;
  if (!like) return undefined;
  const read = printed.map((lines, at) =>
    // Whether a first bar may be a pickup hangs on where the system stands.
    systemOf(at === 0 ? like : { ...like, firstInPart: false, firstInSection: false }, lines),
  );
  const bars: Bar[] = arranged.flatMap((list) => list.bars);
  return saysWhatItCameFrom(read, bars) ? printed : undefined;
}
