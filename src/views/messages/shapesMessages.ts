import type { ShapeKinAnswer, ShapesAnswer, SongShapesAnswer } from '../../service/shapes/shapesAnswer';
import { isAnswer, isCount, isNullable, isOneOf, isText, messageReader, type Check } from './message';

/** What the page shows: shapes of a chord, what became of one shape, and of all of the piece's. */
export type ShapesTab = 'shapes' | 'kin' | 'song';

export const isShapesTab: Check<ShapesTab> = isOneOf('shapes', 'kin', 'song');

/** What the extension says to the shapes. */
export type ToShapes =
  | { readonly kind: 'shapes'; readonly asked: string; readonly answer: ShapesAnswer }
  | { readonly kind: 'kin'; readonly asked: string; readonly answer: ShapeKinAnswer }
  | { readonly kind: 'song'; readonly answer: SongShapesAnswer }
  /** Why there is no answer to what a tab asks. */
  | { readonly kind: 'problem'; readonly tab: ShapesTab; readonly words: string }
  /** The command was called: the box is to be typed into. The chord at the cursor stands in it, if there is one. */
  | { readonly kind: 'begin'; readonly chord: string | null }
  /** Something was done, or could not be. */
  | { readonly kind: 'done'; readonly words: string };

/** What the shapes say to the extension. A shape is named by its `text`, such as `x 3 2 0 1 0`. */
export type FromShapes =
  /** What is shown and what stands in the box, as far as the page remembers. */
  | { readonly kind: 'ready'; readonly tab: ShapesTab; readonly chord: string }
  | { readonly kind: 'ask'; readonly tab: ShapesTab; readonly chord: string }
  /** The shape that is chosen, which the command that saves a picture takes; empty for none. */
  | { readonly kind: 'chosen'; readonly shape: string }
  | { readonly kind: 'insert'; readonly shape: string }
  | { readonly kind: 'copy'; readonly shape: string }
  | { readonly kind: 'picture'; readonly shape: string }
  /** Put the cursor where a chord of the piece stands; line and column from 1. */
  | { readonly kind: 'go'; readonly line: number; readonly column: number };

export const readToShapes = messageReader<ToShapes>({
  shapes: { asked: isText, answer: isAnswer<ShapesAnswer>('chord', 'shapes', 'remarks') },
  kin: { asked: isText, answer: isAnswer<ShapeKinAnswer>('chord', 'usual', 'here', 'moves', 'remarks') },
  song: { answer: isAnswer<SongShapesAnswer>('chords', 'remarks') },
  problem: { tab: isShapesTab, words: isText },
  begin: { chord: isNullable(isText) },
  done: { words: isText },
});

export const readFromShapes = messageReader<FromShapes>({
  ready: { tab: isShapesTab, chord: isText },
  ask: { tab: isShapesTab, chord: isText },
  chosen: { shape: isText },
  insert: { shape: isText },
  copy: { shape: isText },
  picture: { shape: isText },
  go: { line: isCount, column: isCount },
});
