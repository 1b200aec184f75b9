import type { Header } from '../../notation/header';
import type { NotePlace } from '../../notation/print/pieces';
import type { TabDocument } from '../../notation/tabDocument';
import { measurePlacement, type HandAnswer } from '../../playing/hand/handSearch';
import type { PassageNote, Placement } from '../../playing/passage';
import type { Settings } from '../records';
import { doubledToLeave } from './doubled';
import { fittingMoves, handTask, play, playBest, type HandTask, type HandWish } from './handTask';
import { inOctaves } from './octaves';
import {
  entriesOf,
  passagesOf,
  sameNeck,
  withTargets,
  type PassageEntry,
  type PassageGroup,
  type Places,
} from './placing';
import { reasonText } from './reasonText';
import { keyOf, placeAsItIs } from './rewrite';
import type { Slice } from './slices';

/** What is asked of a passage that goes elsewhere. */
export interface Wish extends HandWish {
  /** Half steps by which a note is to sound higher. */
  readonly shift: (entry: PassageEntry) => number;
  /** Whether notes without a place may go to other octaves. */
  readonly octaves?: boolean;
  /** Whether nothing but doubled inner notes may be left out. */
  readonly doubledOnly?: boolean;
  /** Whether notes are placed anew where neither the neck nor their pitches change. */
  readonly anew?: boolean;
  /** Notes that are left out before anything else, with the reason. */
  readonly without?: ReadonlyMap<PassageEntry, string>;
}

/** A way to play a passage. */
export interface Way extends Places {
  /** Half steps by which a note sounds higher than it did. */
  readonly shiftOf: (entry: PassageEntry) => number;
  /** Hand by hand, with the fingering where the model's hand can play it. */
  readonly hands: readonly PlayedHand[];
}

/** What one hand plays. */
export interface PlayedHand {
  readonly task: HandTask;
  /** Undefined where the notes stay as they are and the model's hand cannot play that. */
  readonly answer: HandAnswer | undefined;
  /** Whether its notes stay where they are. */
  readonly stays: boolean;
}

/**
 * Finds the places of notes under other fields, each hand's apart, with the least cost for the hand. Where neither the
 * neck nor the pitches change every note stays where it is.
 * @returns the best way and then others; undefined where `doubledOnly` is not enough
 */
export function waysOf(
  document: TabDocument,
  slices: readonly Slice[],
  headerFor: (header: Header) => Header,
  wish: Wish,
  settings: Settings,
): readonly [Way, ...Way[]] | undefined {
  const entries = entriesOf(document, slices);
  const hands: FingeredHand[] = [];
  for (const group of passagesOf(entries, headerFor)) {
    const hand = placeGroup(document, group, wish, settings);
    if (!hand) return undefined;
    hands.push(hand);
  }
  return waysFrom(entries, hands);
}

/** As many ways as the hand with the most answers has; where a hand has fewer, its best goes on. */
export function waysFrom(
  entries: readonly PassageEntry[],
  hands: readonly FingeredHand[],
): readonly [Way, ...Way[]] {
  const count = Math.max(1, ...hands.map(({ answers }) => answers.length));
  const others = Array.from({ length: count - 1 }, (_, way) => wayOf(entries, hands, way + 1));
  return [wayOf(entries, hands, 0), ...others];
}

/** The best way for a passage that goes up by some half steps. */
export function placeNotes(
  document: TabDocument,
  slices: readonly Slice[],
  headerFor: (header: Header) => Header,
  halfSteps: number,
  settings: Settings,
): Way {
  const ways = waysOf(document, slices, headerFor, { shift: () => halfSteps }, settings);
  if (!ways) throw new Error('A passage that may leave anything out has a way.');
  return ways[0];
}

/** One hand's passage with its answers. */
export interface FingeredHand {
  readonly task: HandTask;
  /** At least one; undefined for notes that stay as they are and that the model's hand cannot play so. */
  readonly answers: readonly (HandAnswer | undefined)[];
  readonly stays: boolean;
  readonly shift: (entry: PassageEntry) => number;
  readonly reasons: ReadonlyMap<PassageEntry, string>;
}

function placeGroup(
  document: TabDocument,
  group: PassageGroup,
  wish: Wish,
  settings: Settings,
): FingeredHand | undefined {
  const whole = handTask(document, group, wish.shift, wish, settings);
  const asked = wish.without;
  const task: HandTask = asked
    ? {
        ...whole,
        notes: whole.notes.filter(({ id }) => {
          const entry = group.entries[id];
          return !entry || !asked.has(entry);
        }),
      }
    : whole;
  const reasons = new Map([...task.rejected, ...(asked ?? [])]);
  const { shift } = wish;
  const isStill = group.entries.every((entry) => shift(entry) === 0);
  if (!wish.anew && isStill && sameNeck(group.before, group.header))
    return { task, answers: [asItStands(task)], stays: true, shift, reasons: asked ?? new Map() };
  let notes = task.notes;
  let octaves: ReadonlyMap<number, number> = new Map();
  if (wish.octaves || wish.doubledOnly) {
    const best = playBest(task, notes);
    if (best.unplaced.length > 0 && wish.octaves) ({ notes, shifts: octaves } = inOctaves(task, best));
    if (best.unplaced.length > 0 && wish.doubledOnly) {
      const now = { ...task, notes };
      const dropped = doubledToLeave(now, playBest(now, notes));
      if (!dropped) return undefined;
      for (const id of dropped) {
        const entry = group.entries[id];
        if (entry) reasons.set(entry, 'it sounds in another octave too, and the hand cannot hold both');
      }
      notes = notes.filter(({ id }) => !dropped.has(id));
    }
  }
  const byEntry = new Map(group.entries.map((entry, id) => [entry, octaves.get(id) ?? 0]));
  return {
    task: { ...task, notes },
    answers: play(task, notes),
    stays: false,
    shift: (entry) => shift(entry) + (byEntry.get(entry) ?? 0),
    reasons,
  };
}

/** What the text's own fingering costs. */
function asItStands(task: HandTask): HandAnswer | undefined {
  return measurePlacement(task.notes, placementsOf(task), task.target, task.options);
}

/** Where the notes of a task stand in the text. */
export function placementsOf({ group, notes }: HandTask): Placement[] {
  return notes.flatMap(({ id }): Placement[] => {
    const entry = group.entries[id];
    const place = entry && placeAsItIs(entry.slice.system, entry.index);
    return place ? [{ ...place, id }] : [];
  });
}

function wayOf(entries: readonly PassageEntry[], hands: readonly FingeredHand[], way: number): Way {
  const places = new Map<string, NotePlace>();
  const reasons = new Map<PassageEntry, string>();
  const shifts = new Map<PassageEntry, number>();
  const played: PlayedHand[] = [];
  for (const hand of hands) {
    const { group } = hand.task;
    const answer = hand.answers[way] ?? hand.answers[0];
    played.push({ task: hand.task, answer, stays: hand.stays });
    for (const entry of group.entries) shifts.set(entry, hand.shift(entry));
    for (const [entry, reason] of hand.reasons) reasons.set(entry, reason);
    if (hand.stays) {
      for (const entry of group.entries) {
        const place = placeAsItIs(entry.slice.system, entry.index);
        if (place && !reasons.has(entry)) places.set(keyOf(entry.slice, entry.index), place);
      }
      continue;
    }
    for (const { id, ...place } of answer?.placements ?? []) {
      const entry = group.entries[id];
      if (entry) places.set(keyOf(entry.slice, entry.index), withTargets(entry, group.header, place));
    }
    for (const unplaced of answer?.unplaced ?? []) {
      const entry = group.entries[unplaced.id];
      if (entry) reasons.set(entry, reasonText(unplaced, group.header));
    }
  }
  let fits: { readonly at: number | undefined } | undefined;
  return {
    entries,
    reasonOf: (entry) => reasons.get(entry),
    at: (slice, index) => places.get(keyOf(slice, index)),
    shiftOf: (entry) => shifts.get(entry) ?? 0,
    hands: played,
    get fitsAt() {
      return (fits ??= { at: fittingMove(hands, way) }).at;
    },
  };
}

/** The smallest move of the whole passage that leaves nothing out; undefined where there are several hands. */
function fittingMove(hands: readonly FingeredHand[], way: number): number | undefined {
  const short = hands.filter(({ answers }) => ((answers[way] ?? answers[0])?.unplaced.length ?? 0) > 0);
  const [one] = short;
  if (!one || short.length > 1) return undefined;
  const notes: readonly PassageNote[] = one.task.notes;
  for (const halfSteps of fittingMoves({ ...one.task, notes })) return halfSteps;
  return undefined;
}
