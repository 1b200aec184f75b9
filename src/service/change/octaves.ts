import type { HandAnswer } from '../../playing/hand/handSearch';
import type { PassageNote } from '../../playing/passage';
import { moved } from '../../playing/transposable';
import { chainsOf } from './chains';
import { playBest, type HandTask } from './handTask';

/** A passage of which some notes have gone to another octave. */
export interface InOctaves {
  readonly notes: readonly PassageNote[];
  /** Half steps by which a note went, by id; 0 is left out. */
  readonly shifts: ReadonlyMap<number, number>;
}

const OCTAVES = [12, -12, 24, -24] as const;

/**
 * Takes the notes that have no place up or down by octaves, each as little as will do; notes that a technique joins go
 * together. Tried in turn for all of them at once; what leaves out the fewest notes is taken, and of equals what moves
 * the fewest.
 * @param best the answer without any such move
 */
export function inOctaves(task: HandTask, best: HandAnswer): InOctaves {
  const chains = chainsOf(task.notes);
  let left = best.unplaced.length;
  const settled = new Map<number, number>();
  let answer = best;
  for (const by of OCTAVES) {
    if (left === 0) break;
    const tried = new Map(settled);
    for (const { id, reason } of answer.unplaced) {
      const way = reason === 'past the last fret' ? -by : by;
      for (const other of chains.get(id) ?? [id]) if (!settled.has(other)) tried.set(other, way);
    }
    const next = playBest(task, shifted(task.notes, tried));
    const stillOut = new Set(next.unplaced.map(({ id }) => id));
    // What has found a place stays there; the rest goes back and is tried the next way.
    const found = new Map(
      [...tried].filter(([id]) => (chains.get(id) ?? [id]).every((other) => !stillOut.has(other))),
    );
    const kept = playBest(task, shifted(task.notes, found));
    if (kept.unplaced.length < left) {
      settled.clear();
      for (const [id, steps] of found) settled.set(id, steps);
      left = kept.unplaced.length;
      answer = kept;
    }
  }
  return { notes: shifted(task.notes, settled), shifts: settled };
}

function shifted(notes: readonly PassageNote[], shifts: ReadonlyMap<number, number>): PassageNote[] {
  return notes.map((note) => moved(note, shifts.get(note.id) ?? 0));
}
