import { add, toNumber } from '../../music/fraction';
import { formatNoteName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { fingerboardOf } from '../../notation/headerViews';
import type { NotePlace } from '../../notation/print/pieces';
import type { NoteReading } from '../../notation/reading';
import type { TabDocument } from '../../notation/tabDocument';
import { placePassage, type PassageNote } from '../../playing/passage';
import type { Target } from '../../playing/target';
import { transposable } from '../../playing/transposable';
import type { Settings } from '../records';
import type { UnplacedNote } from '../serviceApi';
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
  at(slice: Slice, index: number): NotePlace | undefined;
  readonly unplaced: readonly UnplacedNote[];
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

/**
 * Finds the place of each note at its own pitch, moved by some half steps, under other fields. Parts are played by
 * different hands and are placed apart.
 */
export function placeNotes(
  document: TabDocument,
  slices: readonly Slice[],
  headerFor: (header: Header) => Header,
  halfSteps: number,
  settings: Settings,
): Places {
  const entries = entriesOf(document, slices);
  const places = new Map<string, NotePlace>();
  const unplaced: UnplacedNote[] = [];
  const moves: (number | undefined)[] = [];
  for (const group of passagesOf(entries, headerFor)) {
    const target = targetOf(group.header, settings);
    const notes = group.entries.map((entry, id) =>
      passageNote(document, group.entries, entry, id, halfSteps),
    );
    const silent = new Set(
      group.entries.flatMap((entry, id) =>
        entry.note.kind !== 'muted' && entry.note.pitches.length === 0 ? [id] : [],
      ),
    );
    const sounding = notes.filter((note) => !silent.has(note.id));
    const answer = placePassage(sounding, target);
    for (const { id, string, fret, touched } of answer.placements) {
      const entry = group.entries[id];
      if (entry)
        places.set(keyOf(entry.slice, entry.index), {
          string,
          fret,
          ...(touched === undefined ? {} : { touched }),
        });
    }
    for (const id of silent)
      unplaced.push(unplacedNote(group.entries[id], 'it has no pitch where it stands'));
    for (const { id, reason, detail } of answer.unplaced)
      unplaced.push(
        unplacedNote(
          group.entries[id],
          reason === 'no such harmonic' ? 'no string has a harmonic of this pitch' : `${reason}: ${detail}`,
        ),
      );
    if (answer.unplaced.length > 0) moves.push(transposable(sounding, target)[0]?.halfSteps);
  }
  const [fitsAt] = moves.length === 1 ? moves : [];
  return { entries, unplaced, fitsAt, at: (slice, index) => places.get(keyOf(slice, index)) };
}

function keyOf(slice: Slice, index: number): string {
  return `${slice.index}:${index}`;
}

function unplacedNote(entry: PassageEntry | undefined, reason: string): UnplacedNote {
  return { bar: entry?.bar ?? 0, name: entry ? nameOf(entry.note) : '', reason };
}

/** A note's sounding name, or `x`. */
export function nameOf(note: NoteReading): string {
  return (
    note.pitches.map((pitch) => formatNoteName(pitch.name)).join('/') ||
    (note.kind === 'muted' ? 'x' : String(note.fret ?? '?'))
  );
}

function targetOf(header: Header, { reach }: Settings): Target {
  return {
    fingerboard: fingerboardOf(header),
    scaleLength: header.scaleLength,
    reach,
    slide: header.fretting === 'slide',
  };
}

interface Group {
  readonly header: Header;
  readonly entries: PassageEntry[];
}

/** Notes that one hand plays in one go: one part, under one set of fields. */
function passagesOf(entries: readonly PassageEntry[], headerFor: (header: Header) => Header): Group[] {
  const groups: Group[] = [];
  const open = new Map<string | undefined, Group>();
  for (const entry of entries) {
    const { part } = entry.slice.system.header;
    const header = headerFor(entry.slice.system.header);
    const group = open.get(part);
    if (group?.header === header) group.entries.push(entry);
    else {
      const next = { header, entries: [entry] };
      open.set(part, next);
      groups.push(next);
    }
  }
  return groups;
}

function passageNote(
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
  const kinds = note.techniques.map((technique) => technique.kind);
  const stopped = kinds.some((kind) => kind === 'bend' || kind === 'pre-bend' || kind === 'vibrato');
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
        : stopped && (note.fret ?? 0) > 0
          ? 'stopped'
          : 'any',
    reaches: note.techniques.flatMap((t) =>
      t.kind === 'trill' && t.to !== undefined ? [t.to + halfSteps] : [],
    ),
  };
}
