import { fretDistance } from '../instrument/neck';
import { thousandths } from './costs';
import { stringCount, type Target } from './target';

/** Where frets lie, in thousandths of a millimetre from the nut, and where a hand can stand. */
export interface Neck {
  /** Of a fret counted from the nut; decimals allowed. */
  position(fromNut: number): number;
  /** The position of the nut or of a full capo. */
  readonly zero: number;
  /** Lowest and highest hand position, frets from the nut. */
  readonly lowestHand: number;
  readonly highestHand: number;
}

/**
 * The neck of a target. Equal temperament: x(f) = L · (1 − 2^(−f/12)).
 * @example neckOf(target).position(12) // 324000 for 648 mm
 */
export function neckOf(target: Target): Neck {
  const { fingerboard, scaleLength } = target;
  let zeroFret = Infinity;
  for (let index = 0; index < stringCount(target); index++) {
    zeroFret = Math.min(zeroFret, fingerboard.absoluteFret(index, 0));
  }
  if (!Number.isFinite(zeroFret)) zeroFret = 0;
  const position = (fromNut: number): number => thousandths(fretDistance(fromNut, scaleLength));
  const lowestHand = zeroFret + 1;
  const highestHand = Math.max(lowestHand, fingerboard.frets);
  return { position, zero: position(zeroFret), lowestHand, highestHand };
}
