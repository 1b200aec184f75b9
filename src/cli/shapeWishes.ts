import type { ShapeWishes } from '../service/song/songAnswer';
import type { Asked, Option } from './command';
import { numberOf, wordOf } from './optionValues';
import { Refusal } from './refusal';

/** How shapes are chosen for the names of chords. */
export const SHAPE_WISHES: readonly Option[] = [
  {
    name: 'style',
    value: 'full|small',
    help: 'shapes on as many strings as sound well (the default), or on three or four',
  },
  { name: 'highest-fret', value: 'N', help: 'the highest fret, such as 5; 12 without it' },
  { name: 'open', help: 'open strings wherever they fit' },
  { name: 'closed', help: 'no open strings' },
];

/**
 * Reads them.
 * @throws {Refusal} for a value that is none, and for --open beside --closed
 */
export function shapeWishesOf(asked: Asked): ShapeWishes {
  const style = wordOf(asked, 'style', ['full', 'small'] as const);
  const highestFret = numberOf(asked, 'highest-fret', { whole: true, least: 0, most: 36 });
  const { flags } = asked;
  if (flags.has('open') && flags.has('closed'))
    throw new Refusal('--open and --closed ask for opposite things; give one of them.');
  return {
    ...(style && { style }),
    ...(highestFret !== undefined && { highestFret }),
    ...(flags.has('open') && { open: true }),
    ...(flags.has('closed') && { open: false }),
  };
}
