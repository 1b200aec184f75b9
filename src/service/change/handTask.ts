import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import { heldEnds } from '../../playing/hand/heldEnds';
import { handOptions, playPassage, type HandAnswer, type HandOptions } from '../../playing/hand/handSearch';
import type { PassageNote } from '../../playing/passage';
import type { Target } from '../../playing/target';
import { moved, transposable } from '../../playing/transposable';
import type { Settings } from '../records';
import { passageNote, targetOf, type PassageEntry, type PassageGroup } from './placing';

/** What is asked of the hand. */
export interface HandWish {
  readonly objective?: HandOptions['objective'];
  readonly openStrings?: boolean;
  readonly strings?: readonly number[];
  readonly caps?: HandOptions['caps'];
  readonly weights?: NonNullable<HandOptions['weights']>;
  readonly alternatives?: number;
}

/** One hand's passage, ready to be fingered. */
export interface HandTask {
  readonly group: PassageGroup;
  readonly notes: readonly PassageNote[];
  readonly target: Target;
  readonly options: HandOptions;
  /** Why a note is not among `notes`. */
  readonly rejected: ReadonlyMap<PassageEntry, string>;
}

/**
 * The notes that one hand plays, each moved by some half steps, with the neck and the hand that is to play them.
 * @param shift half steps by which a note moves, as it was asked for
 */
export function handTask(
  document: TabDocument,
  group: PassageGroup,
  shift: (entry: PassageEntry) => number,
  wish: HandWish,
  settings: Settings,
): HandTask {
  const rejected = new Map<PassageEntry, string>();
  const notes: PassageNote[] = [];
  group.entries.forEach((entry, id) => {
    if (entry.note.kind !== 'muted' && entry.note.pitches.length === 0)
      rejected.set(entry, 'it has no pitch where it stands');
    else notes.push(passageNote(document, group.entries, entry, id, shift(entry)));
  });
  return {
    group,
    // Tab lets everything ring until its string is struck again; a hand holds what the music needs.
    notes: heldEnds(notes),
    target: targetOf(group.header, settings),
    options: optionsFor(group.header, group.entries, wish, settings),
    rejected,
  };
}

function optionsFor(
  header: Header,
  entries: readonly PassageEntry[],
  wish: HandWish,
  { thumb }: Settings,
): HandOptions {
  const { strings, weights, ...rest } = wish;
  return handOptions({
    objective: rest.objective ?? 'total',
    openStrings: rest.openStrings ?? true,
    caps: rest.caps ?? {},
    alternatives: rest.alternatives ?? 1,
    strings,
    thumb,
    ...(weights ? { weights } : {}),
    barOf: (id) => entries[id]?.bar ?? 0,
    groupOf: (id) => entries[id]?.slice.system.section?.line ?? -1,
    secondsPerQuarter: 60 / header.tempo.quartersPerMinute,
  });
}

/** The fingerings of a task, the best first. */
export function play({ target, options }: HandTask, notes: readonly PassageNote[]): readonly HandAnswer[] {
  return playPassage(notes, target, options);
}

/** The best fingering alone. */
export function playBest(task: HandTask, notes: readonly PassageNote[]): HandAnswer {
  const [best] = playPassage(notes, task.target, { ...task.options, alternatives: 1 });
  if (!best) throw new Error('A passage has an answer even where all of it is left out.');
  return best;
}

/** Whether every note has a place. */
export function plays(task: HandTask, notes: readonly PassageNote[]): boolean {
  const options = { ...task.options, alternatives: 1, objective: 'total' as const };
  return playPassage(notes, task.target, options)[0]?.unplaced.length === 0;
}

/** Passages of more notes are not tried in other keys or under other capos. */
export const MOST_NOTES_TO_TRY = 3000;

/**
 * The smallest moves of a passage as a whole that leave nothing out, in half steps, as far as an octave; a plain model
 * that allows more than the hand does says which are worth a try.
 */
export function* fittingMoves(task: HandTask): Generator<number> {
  if (task.notes.length > MOST_NOTES_TO_TRY) return;
  for (const { halfSteps } of transposable(task.notes, task.target))
    if (
      plays(
        task,
        task.notes.map((note) => moved(note, halfSteps)),
      )
    )
      yield halfSteps;
}
