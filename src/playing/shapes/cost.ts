import { sureCosts } from '../hand/fingerCosts';
import { eachFingering, indexPosition, type Stop } from '../hand/fingering';
import type { Frame } from '../hand/frame';
import { eachTerm } from '../hand/gripCost';
import type { StringChoice } from './strings';
import { countTones } from './wanted';

/** What a shape costs the hand by itself, with its best fingers. */
export interface ShapeCost {
  readonly cost: number;
  /** Fret of the index finger from the nut. */
  readonly position: number;
  readonly tie: number;
}

/**
 * The hand's cost of a shape, or undefined where no fingers hold it or it costs as much as `below` or more.
 * The fingers themselves are told by `fingerGrip`, which weighs the same terms.
 */
export function shapeCost(
  choices: readonly (StringChoice | undefined)[],
  frame: Frame,
  below: number,
): ShapeCost | undefined {
  const stops: Stop[] = [];
  let opens = 0;
  let busy = 0;
  let tie = 0;
  choices.forEach((choice, index) => {
    if (!choice) return;
    busy |= 1 << index;
    tie += choice.written;
    if (choice.open) opens |= 1 << index;
    else stops.push({ index, fret: choice.fret });
  });
  const opened = countTones(opens);
  let least = below;
  let at: number | undefined;
  const offer = (fingers: readonly number[]): void => {
    const position = indexPosition(stops, fingers, frame) ?? frame.lowest;
    let cost = 0;
    eachTerm(
      { stops, fingers, opens, struck: busy, busy, position },
      'shape',
      frame,
      (name, amount, share) => {
        cost += frame.k[name] * amount * share;
      },
    );
    if (cost >= least - 1e-9) return;
    [least, at] = [cost, position];
  };
  if (frame.slide) {
    if (isStraight(stops, opens)) offer(stops.map(() => 1));
  } else
    eachFingering(
      stops,
      opens,
      frame,
      offer,
      true,
      sureCosts(frame, opened, () => least),
    );
  return at === undefined ? undefined : { cost: least, position: at, tie };
}

/** Whether one straight bar gives all stops, with no open string under it. */
function isStraight(stops: readonly Stop[], opens: number): boolean {
  const [first] = stops;
  const last = stops.at(-1);
  if (!first || !last) return true;
  for (let index = first.index + 1; index < last.index; index++) if ((opens >> index) & 1) return false;
  return stops.every(({ fret }) => fret === first.fret);
}
