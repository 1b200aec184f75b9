import type { HandAnswer } from '../../playing/hand/handSearch';
import type { PassageNote } from '../../playing/passage';
import { chainsOf, momentsIn } from './chains';
import { playBest, plays, type HandTask } from './handTask';

/** Rounds after which no more is tried; each leaves out more. */
const MOST_ROUNDS = 6;

/**
 * The doubled inner notes to leave out so that everything else has a place: at each moment as few as will do, its lowest
 * and highest note kept and every pitch class still sounding. Undefined where that is not enough. Notes that a technique
 * joins stay.
 * @param best the answer that is free to leave out anything
 * @returns ids
 */
export function doubledToLeave(task: HandTask, best: HandAnswer): ReadonlySet<number> | undefined {
  const chains = chainsOf(task.notes);
  const isAlone = ({ id }: PassageNote): boolean => (chains.get(id)?.length ?? 1) === 1;
  const moments = momentsIn(task.notes);
  const dropped = new Set<number>();
  let answer = best;
  for (let round = 0; answer.unplaced.length > 0; round++) {
    if (round === MOST_ROUNDS) return undefined;
    const out = new Set(answer.unplaced.map(({ id }) => id));
    for (const moment of moments) {
      const lost = moment.filter(({ id }) => out.has(id));
      if (lost.length === 0) continue;
      const here = moment.filter(({ id }) => !dropped.has(id));
      const fine = lost.every(isAlone) && keepsChord(moment, without(here, lost));
      const leave = fine && round === 0 ? lost : fewestDoubled(task, moment, here, isAlone);
      if (!leave) return undefined;
      for (const { id } of leave) dropped.add(id);
    }
    answer = playBest(task, without(task.notes, dropped));
  }
  return dropped;
}

/** The fewest of the notes of a moment to leave out; at least one. */
function fewestDoubled(
  task: HandTask,
  moment: readonly PassageNote[],
  here: readonly PassageNote[],
  isAlone: (note: PassageNote) => boolean,
): readonly PassageNote[] | undefined {
  const may = here.filter((note) => isAlone(note) && keepsChord(moment, without(here, [note])));
  for (let size = 1; size <= may.length; size++) {
    for (const leave of choices(may, size)) {
      const rest = without(here, leave);
      if (keepsChord(moment, rest) && plays(task, rest)) return leave;
    }
  }
  return undefined;
}

/** Whether some notes of a moment still hold its lowest and highest pitch and all its pitch classes. */
export function keepsChord(moment: readonly PassageNote[], kept: readonly PassageNote[]): boolean {
  const pitches = (notes: readonly PassageNote[]): number[] => notes.flatMap(({ midi }) => midi ?? []);
  const [all, left] = [pitches(moment), pitches(kept)];
  const strokes = moment.length - all.length === kept.length - left.length;
  const classes = new Set(left.map(pitchClass));
  return (
    strokes &&
    Math.min(...all) === Math.min(...left) &&
    Math.max(...all) === Math.max(...left) &&
    all.every((midi) => classes.has(pitchClass(midi)))
  );
}

function pitchClass(midi: number): number {
  return (Math.round(midi * 100) % 1200) / 100;
}

function without(
  notes: readonly PassageNote[],
  left: readonly PassageNote[] | ReadonlySet<number>,
): PassageNote[] {
  const ids =
    left instanceof Set
      ? (left as ReadonlySet<number>)
      : new Set([...(left as readonly PassageNote[])].map(({ id }) => id));
  return notes.filter(({ id }) => !ids.has(id));
}

/** Every choice of some of a list, in the order of the list. */
function* choices<T>(from: readonly T[], size: number, start = 0): Generator<T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let at = start; at <= from.length - size; at++) {
    const one = from[at];
    if (one === undefined) continue;
    for (const rest of choices(from, size - 1, at + 1)) yield [one, ...rest];
  }
}
