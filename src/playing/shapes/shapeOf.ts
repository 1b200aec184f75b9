import { isReentrant } from '../../instrument/isReentrant';
import { frameOf } from '../hand/frame';
import { fingerGrip } from '../hand/grips';
import type { HandOptions } from '../hand/options';
import type { Target } from '../target';
import { shapeCost } from './cost';
import type { FoundShape } from './found';
import type { Shape } from './shape';
import type { StringChoice } from './strings';
import { wantedSet } from './wanted';
import { weigh } from './weigh';

/** A shape as it is told, with its fingers; undefined where no hand holds it. */
export function shapeOf(found: FoundShape, target: Target, hand: HandOptions): Shape | undefined {
  const frets = found.choices.map((choice) => choice?.written);
  const places = frets.flatMap((fret, index) =>
    fret === undefined ? [] : [{ string: frets.length - index, fret }],
  );
  const { best } = fingerGrip(places, target, hand);
  const { sounding, leftOut, bass, innerMuted, cost } = found;
  return best && { frets, grip: best, sounding, leftOut, bass, innerMuted, cost };
}

/**
 * The shape of given frets, whatever it sounds, or why there is none: a fret that is not there, or no hand.
 * @param frets by index, low-placed string first, as frets are written; undefined is not played
 */
export function shapeOfFrets(
  frets: readonly (number | undefined)[],
  target: Target,
  hand: HandOptions,
): { readonly shape: Shape } | { readonly refused: readonly string[] } {
  const board = target.fingerboard;
  const places = frets.flatMap((fret, index) =>
    fret === undefined ? [] : [{ string: board.tuning.strings.length - index, fret }],
  );
  const { best, refused } = fingerGrip(places, target, hand);
  if (!best) return { refused };
  const choices = board.tuning.strings.map((_, index): StringChoice | undefined => {
    const fret = frets[index];
    const read = fret === undefined ? undefined : board.read(index, fret);
    if (fret === undefined || !read?.ok) return undefined;
    const midis = read.midis.map((midi) => Math.round(midi));
    const mask = midis.reduce((bits, midi) => bits | (1 << (((midi % 12) + 12) % 12)), 0);
    return { written: fret, fret: read.stopFret, open: fret === 0, mask, lowest: Math.min(...midis) };
  });
  const wanted = wantedSet(choices.flatMap((choice) => (choice ? [choice.lowest] : [])));
  if (!wanted) return { refused: ['no string is played'] };
  const { sounding, bass, innerMuted, extra } = weigh(choices, wanted, isReentrant(board.tuning));
  const cost = (shapeCost(choices, frameOf(target, hand), Infinity)?.cost ?? best.cost) + extra;
  return { shape: { frets, grip: best, sounding, leftOut: 0, bass, innerMuted, cost } };
}
