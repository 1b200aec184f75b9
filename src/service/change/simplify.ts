import type { TabDocument } from '../../notation/tabDocument';
import { measurePlacement, type HandAnswer, type HandCaps } from '../../playing/hand/handSearch';
import type { PassageNote } from '../../playing/passage';
import type { Settings } from '../records';
import type { ChangeResult, Report, ServiceError, SimplifyRequest } from '../serviceApi';
import { chainsOf } from './chains';
import { changeOf, NOTHING_THERE, wideningCuts, type Attempt } from './change';
import { measureRemarks, measuresOf } from './handMeasures';
import { handTask, play, playBest, type HandTask } from './handTask';
import { entriesOf, nameOf, passagesOf, unplacedNotes, type PassageEntry } from './placing';
import { notesOutOf, verb } from './remarks';
import { keyOf } from './rewrite';
import { hasStrings, slicesIn, type Slice } from './slices';
import { slowed } from './speed';
import { troubleIn } from './troubles';
import { isInner, voicesOf, type Voice } from './voices';
import { placementsOf, waysFrom, type FingeredHand, type Way } from './ways';

/**
 * Brings a passage within limits for a student. Its tune (the top) and its bass are kept; inner notes go as far as must
 * be, each named in the report and in the text where it stood.
 */
export function simplify(document: TabDocument, request: SimplifyRequest, settings: Settings): ChangeResult {
  const slices = slicesIn(document, request.range);
  if (!slices.some(hasStrings)) return { error: NOTHING_THERE };
  const trouble = limitTrouble(request) ?? troubleIn(document, slices);
  if (trouble) return { error: trouble };
  return wideningCuts(document, slices, (wider) => write(document, wider, request, settings));
}

function limitTrouble({ span, speed, barres, fingers, highestFret }: SimplifyRequest): string | undefined {
  const given = [span, speed, fingers, highestFret].some((limit) => limit !== undefined) || barres === false;
  if (!given)
    return 'Give at least one limit: the span in millimetres, notes a second, fingers, the highest fret, or no barres.';
  if (span !== undefined && !(span > 0)) return 'Give the widest span in millimetres, such as 90.';
  if (speed !== undefined && !(speed > 0)) return 'Give the speed in notes a second, such as 3.';
  if (fingers !== undefined && !(Number.isInteger(fingers) && fingers >= 1 && fingers <= 4))
    return 'Give the most fingers at once, 1 to 4.';
  if (highestFret !== undefined && !(Number.isInteger(highestFret) && highestFret >= 0))
    return 'Give the highest fret as a number, such as 5.';
  return undefined;
}

function write(
  document: TabDocument,
  slices: readonly Slice[],
  request: SimplifyRequest,
  settings: Settings,
): Attempt {
  const { span, fingers, barres, highestFret } = request;
  const caps: HandCaps = {
    ...(span !== undefined && { span }),
    ...(fingers !== undefined && { fingers }),
    ...(barres !== undefined && { barres }),
    ...(highestFret !== undefined && { highestFret }),
  };
  const entries = entriesOf(document, slices);
  const hands: FingeredHand[] = [];
  for (const group of passagesOf(entries, (header) => header)) {
    const task = handTask(document, group, () => 0, { caps }, settings);
    const hand = simpler(task, request);
    if ('error' in hand) return hand;
    hands.push(hand);
  }
  const [way] = waysFrom(entries, hands);
  const names = new Map(entries.map((entry) => [keyOf(entry.slice, entry.index), nameOf(entry.note)]));
  let lost: PassageEntry | undefined;
  const attempt = changeOf(
    document,
    slices,
    {
      header: ({ system }) => system.header,
      place: way.at,
      keepLabels: true,
      omitted: (slice, index) => names.get(keyOf(slice, index)),
    },
    (unwritten) => {
      lost = unwrittenOuter(hands, unwritten);
      return reportOf(document, way, unwritten);
    },
    settings,
  );
  return lost
    ? {
        error: `Within these limits ${nameOf(lost.note)} in bar ${lost.bar} cannot be written beside the signs on its string; allow more, or choose other bars.`,
      }
    : attempt;
}

/** A note of the tune or the bass that has a place and yet could not be written. */
function unwrittenOuter(
  hands: readonly FingeredHand[],
  unwritten: ReadonlySet<string>,
): PassageEntry | undefined {
  if (unwritten.size === 0) return undefined;
  for (const { task } of hands) {
    const voices = voicesOf(task.notes);
    for (const { id } of task.notes) {
      const entry = task.group.entries[id];
      if (entry && unwritten.has(keyOf(entry.slice, entry.index)) && !isInner(voices.get(id))) return entry;
    }
  }
  return undefined;
}

function simpler(task: HandTask, { speed }: SimplifyRequest): FingeredHand | ServiceError {
  const voices = voicesOf(task.notes);
  const slow =
    speed === undefined
      ? { drop: new Set<number>() }
      : slowed(task.notes, voices, speed, task.options.secondsPerQuarter);
  if ('tooFast' in slow) {
    const { id, voice, speed: own } = slow.tooFast;
    return {
      error: `The ${voice} itself goes at ${own} notes a second at bar ${task.group.entries[id]?.bar ?? 0}; allow as many, or slow the tempo.`,
    };
  }
  const fast = without(task.notes, slow.drop);
  const reasons = new Map<PassageEntry, string>();
  const give = (ids: Iterable<number>, reason: string): void => {
    for (const id of ids) {
      const entry = task.group.entries[id];
      if (entry) reasons.set(entry, reason);
    }
  };
  give(slow.drop, `an inner note, left out so that no more than ${speed} notes a second follow each other`);
  const as = { ...task, notes: fast };
  const text = measurePlacement(fast, placementsOf(as), task.target, task.options);
  if (text) return { task: as, answers: [text], stays: true, shift: () => 0, reasons };
  const found = keepingOuter(as, voices);
  if ('error' in found) return found;
  give(found.dropped, 'an inner note, left out so that tune and bass keep within the limits');
  const rest = { ...task, notes: without(fast, found.dropped) };
  return { task: rest, answers: play(rest, rest.notes), stays: false, shift: () => 0, reasons };
}

/** More notes than this are not tried one by one to see whether they can stay after all. */
const MOST_TO_TRY_AGAIN = 40;

/** The inner notes to leave out so that the hand leaves out none of the tune and the bass. */
function keepingOuter(
  task: HandTask,
  voices: ReadonlyMap<number, Voice>,
): { readonly dropped: ReadonlySet<number> } | ServiceError {
  const chains = chainsOf(task.notes);
  const chain = (id: number): readonly number[] => chains.get(id) ?? [id];
  const mayGo = (id: number): boolean => chain(id).every((other) => isInner(voices.get(other)));
  const byId = new Map(task.notes.map((note) => [note.id, note]));
  const dropped = new Set<number>();
  for (;;) {
    const answer = playBest(task, without(task.notes, dropped));
    const lost = answer.unplaced.flatMap(({ id }) => (mayGo(id) ? [] : (byId.get(id) ?? [])));
    if (lost.length === 0) break;
    let more = false;
    for (const note of lost) {
      const inner = task.notes
        .filter(
          ({ id, onset, end }) => !dropped.has(id) && mayGo(id) && onset <= note.onset && end > note.onset,
        )
        .sort(
          (a, b) => b.onset - a.onset || Number(isDoubled(b, task.notes)) - Number(isDoubled(a, task.notes)),
        );
      const [go] = inner;
      if (!go) continue;
      for (const id of chain(go.id)) dropped.add(id);
      more = true;
    }
    if (!more) return { error: unreachable(task, answer, lost) };
  }
  if (dropped.size <= MOST_TO_TRY_AGAIN) {
    for (const id of [...dropped]) {
      const fewer = new Set([...dropped].filter((other) => !chain(id).includes(other)));
      if (playBest(task, without(task.notes, fewer)).unplaced.every(({ id: out }) => mayGo(out)))
        for (const other of chain(id)) dropped.delete(other);
    }
  }
  return { dropped };
}

function isDoubled({ id, midi, onset }: PassageNote, notes: readonly PassageNote[]): boolean {
  if (midi === undefined) return false;
  return notes.some(
    (other) =>
      other.id !== id && other.onset === onset && other.midi !== undefined && (other.midi - midi) % 12 === 0,
  );
}

function unreachable({ group }: HandTask, { unplaced }: HandAnswer, lost: readonly PassageNote[]): string {
  const [first] = lost;
  const entry = first && group.entries[first.id];
  const name = entry ? nameOf(entry.note) : 'a note';
  const why = unplaced.find(({ id }) => id === first?.id)?.detail ?? '';
  return `Within these limits ${name} of the tune or bass in bar ${entry?.bar ?? 0} has no place; allow more, or choose other bars.${why === '' || /MIDI/.test(why) ? '' : ` ${why}`}`;
}

function without(notes: readonly PassageNote[], dropped: ReadonlySet<number>): PassageNote[] {
  return notes.filter(({ id }) => !dropped.has(id));
}

function reportOf(document: TabDocument, way: Way, unwritten: ReadonlySet<string>): Report {
  const unplaced = unplacedNotes(document, way.entries, way.reasonOf, unwritten);
  const notesIn = way.entries.length;
  const kept = notesIn - unplaced.length;
  const measures = measuresOf(document, way);
  const nothing = unplaced.length === 0 && way.hands.every(({ stays }) => stays);
  return {
    notesIn,
    kept,
    moved: 0,
    unplaced,
    remarks: [
      nothing
        ? 'The passage is within these limits already; nothing changes.'
        : `${notesOutOf(kept, notesIn)} ${verb(kept, notesIn, 'stay', 'stays')}, tune and bass among them.`,
      ...(unplaced.length === 0
        ? []
        : [`${unplaced.length} inner ${unplaced.length === 1 ? 'note is' : 'notes are'} left out.`]),
      ...measureRemarks(measures),
    ],
    ...(measures && { measures }),
  };
}
