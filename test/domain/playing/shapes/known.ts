import { readChordName } from '../../../../src/music/chord/readChordName';
import { handOptions, type HandOptions } from '../../../../src/playing/hand/options';
import { findShapes, type Shape, type ShapeOptions } from '../../../../src/playing/shapes/findShapes';
import { wantedChord, type WantedChord } from '../../../../src/playing/shapes/wanted';
import type { Target } from '../../../../src/playing/target';

/** What a name asks for; throws for one that cannot be read. */
export function wanted(name: string, by = 0): WantedChord {
  const read = readChordName(name);
  const chord = read.ok ? wantedChord(read.value, by) : undefined;
  if (!chord) throw new Error(`${name} names no chord.`);
  return chord;
}

/** The shapes of a name. */
export function shapesOf(
  name: string,
  target: Target,
  more: Partial<ShapeOptions> & { readonly by?: number } = {},
  hand: Partial<HandOptions> = {},
): readonly Shape[] {
  const { by = 0, ...options } = more;
  return findShapes(wanted(name, by), target, { hand: handOptions(hand), ...options });
}

/** `x32010`; frets above 9 apart. */
export function textOf({ frets }: Pick<Shape, 'frets'>): string {
  const signs = frets.map((fret) => String(fret ?? 'x'));
  return signs.some(({ length }) => length > 1) ? signs.join(' ') : signs.join('');
}
