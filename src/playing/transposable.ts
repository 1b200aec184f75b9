import { PLAIN_COSTS } from './costs';
import { playable } from './layers';
import { momentsOf } from './moments';
import { handOf, placeFinder } from './placeAll';
import type { PassageNote } from './passage';
import type { Target } from './target';

/** A move of the whole passage after which every note has a place. */
export interface Transposition {
  /** Half steps; positive is up. Never 0. */
  readonly halfSteps: number;
}

/** An octave each way holds every key once. */
const FARTHEST = 12;

/**
 * The transpositions of a whole passage, up to an octave each way, that leave no note out, smallest first and of equals
 * the one upwards.
 * @example transposable(notes, target)[0] // { halfSteps: 2 }
 */
export function transposable(notes: readonly PassageNote[], target: Target): readonly Transposition[] {
  const hand = handOf(target);
  const find = placeFinder(target, hand);
  const found: Transposition[] = [];
  for (let size = 1; size <= FARTHEST; size++) {
    for (const halfSteps of [size, -size]) {
      const { moments, rejected } = momentsOf(
        notes.map((note) => moved(note, halfSteps)),
        find,
      );
      if (rejected.length === 0 && playable(moments, hand, PLAIN_COSTS)) found.push({ halfSteps });
    }
  }
  return found;
}

/** A note some half steps higher, its bends and trills with it. */
export function moved(note: PassageNote, halfSteps: number): PassageNote {
  const midi = note.midi === undefined ? undefined : note.midi + halfSteps;
  return { ...note, midi, reaches: note.reaches.map((pitch) => pitch + halfSteps) };
}
