import { add, toNumber } from '../../music/fraction';
import { formatNoteName } from '../../music/noteName';
import { formatCapo } from '../../instrument/capo';
import { sameTuning } from '../../instrument/tuningFormat';
import type { Header } from '../../notation/header';
import { fingerboardOf } from '../../notation/headerViews';
import type { NotePlace } from '../../notation/print/pieces';
import type { NoteReading, TechniqueKind } from '../../notation/reading';
import type { TabDocument } from '../../notation/tabDocument';
import type { PassageNote } from '../../playing/passage';
import type { Target } from '../../playing/target';
import type { Settings } from '../records';
import type { UnplacedNote } from '../serviceApi';
import { keyOf } from './rewrite';
import { notesOf, type Slice } from './slices';

/** A note of a passage with where it stands. */
export interface PassageEntry {
  readonly slice: Slice;
  readonly index: number;
  readonly note: NoteReading;
  readonly bar: number;
}

/** Where the notes of a passage go. */
export interface Places {
  readonly entries: readonly PassageEntry[];
  readonly at: (slice: Slice, index: number) => NotePlace | undefined;
  /** Why a note has no place, as the end of a sentence; undefined for the others. */
  readonly reasonOf: (entry: PassageEntry) => string | undefined;
  /** The smallest move of the whole passage, in half steps, that leaves nothing out; undefined when none or none is needed. */
  readonly fitsAt: number | undefined;
}

/** Every note of some slices. */
export function entriesOf(document: TabDocument, slices: readonly Slice[]): PassageEntry[] {
  return slices.flatMap((slice) => {
    const { firstBar } = document.placeOf(slice.system);
    return notesOf(slice).map(({ index, note }) => ({ slice, index, note, bar: firstBar + note.bar }));
  });
}

/** A place with what its technique's frets move by, where that is not as far as its own fret. */
export function withTargets({ slice, note }: PassageEntry, after: Header, place: NotePlace): NotePlace {
  if (note.fret === undefined || note.techniques.every(({ toFret }) => toFret === undefined)) return place;
  const before = slice.system.header;
  const by =
    stopAt(after, place.string, place.fret) - stopAt(before, note.string, note.fret) + note.fret - place.fret;
  return by === 0 ? place : { ...place, targetsBy: place.fret - note.fret + by };
}

/** Where a number stops a string, counted as numbers other than 0 count on it. */
function stopAt(header: Header, string: number, fret: number): number {
  const board = fingerboardOf(header);
  const index = header.tuning.strings.length - string;
  return board.absoluteFret(index, fret) - (board.absoluteFret(index, 1) - 1);
}

/** Whether a number leaves a string open: 0, and under a partial capo the capo's own fret, too. */
export function isOpenAt(header: Header, string: number, fret: number): boolean {
  const board = fingerboardOf(header);
  const index = header.tuning.strings.length - string;
  return board.absoluteFret(index, fret) === board.absoluteFret(index, 0);
}

/** Whether every written number means the same pitch. */
export function sameNeck(a: Header, b: Header): boolean {
  return (
    a === b ||
    (a.frets === b.frets && sameTuning(a.tuning, b.tuning) && formatCapo(a.capo) === formatCapo(b.capo))
  );
}

/** The notes that are left out, part by part in the order of time: for a reason, or since they could not be written. */
export function unplacedNotes(
  document: TabDocument,
  entries: readonly PassageEntry[],
  reasonOf: (entry: PassageEntry) => string | undefined,
  unwritten: ReadonlySet<string>,
): UnplacedNote[] {
  const { parts } = document;
  const partOf = ({ slice }: PassageEntry): number => parts.indexOf(slice.system.header.part);
  return [...entries]
    .sort((a, b) => partOf(a) - partOf(b))
    .flatMap((entry) => {
      const reason = unwritten.has(keyOf(entry.slice, entry.index))
        ? 'its signs cannot be written beside the other notes of its string'
        : reasonOf(entry);
      if (reason === undefined) return [];
      const { part } = entry.slice.system.header;
      const note = { bar: entry.bar, name: nameInReport(entry.note), reason };
      return parts.length > 1 && part !== undefined ? [{ ...note, part }] : [note];
    });
}

/** A bare fret would read as a count of notes in a sentence. */
function nameInReport(note: NoteReading): string {
  const hasName = note.pitches.length > 0 || note.kind === 'muted' || note.fret === undefined;
  return hasName ? nameOf(note) : `fret ${note.fret} on string ${note.string}`;
}

/** A note's sounding name, or `x`. */
export function nameOf(note: NoteReading): string {
  return (
    note.pitches.map((pitch) => formatNoteName(pitch.name)).join('/') ||
    (note.kind === 'muted' ? 'x' : String(note.fret ?? '?'))
  );
}

/** The neck under a header, and how far the hand reaches. */
export function targetOf(header: Header, { reach }: Settings): Target {
  return {
    fingerboard: fingerboardOf(header),
    scaleLength: header.scaleLength,
    reach,
    slide: header.fretting === 'slide',
  };
}

/** Notes that one hand plays in one go: one part, under one set of fields. */
export interface PassageGroup {
  /** The fields before the change, and after it. */
  readonly before: Header;
  readonly header: Header;
  readonly entries: PassageEntry[];
}

/** The passages of single hands; parts are played by different ones. */
export function passagesOf(
  entries: readonly PassageEntry[],
  headerFor: (header: Header) => Header,
): PassageGroup[] {
  const groups: PassageGroup[] = [];
  const open = new Map<string | undefined, PassageGroup>();
  for (const entry of entries) {
    const { part } = entry.slice.system.header;
    const header = headerFor(entry.slice.system.header);
    const group = open.get(part);
    if (group?.header === header) group.entries.push(entry);
    else {
      const next = { before: entry.slice.system.header, header, entries: [entry] };
      open.set(part, next);
      groups.push(next);
    }
  }
  return groups;
}

/** What cannot be done on an open string; a finger slides to and from a stopped place. */
const NEEDS_A_FINGER: ReadonlySet<TechniqueKind> = new Set<TechniqueKind>([
  'bend',
  'pre-bend',
  'vibrato',
  'hammer-on',
  'tap',
  'slide',
  'slide-from-nowhere',
  'slide-to-nowhere',
]);

/** Whether a note is stopped for the sake of what is done to it. */
export function needsFinger({ system }: Slice, { fret, joinedFrom, techniques }: NoteReading): boolean {
  if (fret === undefined || fret === 0) return false;
  const source = joinedFrom === undefined ? undefined : system.reading.notes[joinedFrom];
  return (
    techniques.some(({ kind }) => NEEDS_A_FINGER.has(kind)) ||
    source?.techniques.some(({ kind }) => kind === 'slide') === true
  );
}

/** A note as the hand's search takes it. */
export function passageNote(
  document: TabDocument,
  entries: readonly PassageEntry[],
  { slice, note }: PassageEntry,
  id: number,
  halfSteps: number,
): PassageNote {
  const start = document.placeOf(slice.system).onset;
  const from =
    note.joinedFrom === undefined
      ? -1
      : entries.findLastIndex(
          (entry, i) => i < id && entry.slice === slice && entry.index === note.joinedFrom,
        );
  const [pitch] = note.pitches;
  return {
    id,
    midi: pitch && pitch.midi + halfSteps,
    onset: toNumber(add(start, note.onset)),
    end: toNumber(document.endOf(slice.system, note)),
    string: note.string,
    joinedTo: from < 0 ? undefined : from,
    need:
      note.kind === 'natural-harmonic' || note.kind === 'artificial-harmonic'
        ? note.kind
        : needsFinger(slice, note)
          ? 'stopped'
          : 'any',
    reaches: note.techniques.flatMap((t) =>
      t.kind === 'trill' && t.to !== undefined ? [t.to + halfSteps] : [],
    ),
  };
}
