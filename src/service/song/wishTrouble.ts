import type { ShapeWishes } from './songAnswer';

/** Frets that tab can write. */
const LAST_FRET = 36;

/** Why a request for shapes makes no sense; undefined when it does. */
export function wishTrouble({ highestFret }: ShapeWishes): string | undefined {
  if (highestFret === undefined) return undefined;
  const fits = Number.isInteger(highestFret) && highestFret >= 0 && highestFret <= LAST_FRET;
  return fits ? undefined : `The highest fret is a whole number from 0 to ${LAST_FRET}, such as 5 or 12.`;
}
