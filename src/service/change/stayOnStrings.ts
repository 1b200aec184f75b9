import { harmonicAt } from '../../music/harmonics';
import type { Header } from '../../notation/header';
import { fingerboardOf } from '../../notation/headerViews';
import type { NotePlace } from '../../notation/print/pieces';
import type { NoteReading } from '../../notation/reading';
import type { TabDocument } from '../../notation/tabDocument';
import type { UnplacedNote } from '../serviceApi';
import { entriesOf, sameNeck, unplacedNotes, type PassageEntry } from './placing';
import { keyOf, placeAsItIs } from './rewrite';
import type { Slice } from './slices';

/** A passage whose notes all stay on their strings and frets under other fields. */
export interface Staying {
  readonly place: (slice: Slice, index: number) => NotePlace | undefined;
  /** What becomes of the notes, when it is known which could not be written. */
  readonly count: (unwritten: ReadonlySet<string>) => Counted;
}

/** notesIn = kept + moved + unplaced.length */
export interface Counted {
  readonly notesIn: number;
  /** Still sound the same pitch. */
  readonly kept: number;
  readonly moved: number;
  readonly unplaced: readonly UnplacedNote[];
}

/**
 * Holds each note of a passage against the neck it will be played on; what cannot be played there is left out.
 * @param headerFor the fields after the change
 * @param reasonOf why a note cannot be played, as the end of a sentence
 */
export function stayOnStrings(
  document: TabDocument,
  slices: readonly Slice[],
  headerFor: (header: Header) => Header,
  reasonOf: (header: Header, note: NoteReading) => string,
): Staying {
  const entries = entriesOf(document, slices);
  const fates = new Map(entries.map((entry) => [keyOf(entry.slice, entry.index), fateOf(entry, headerFor)]));
  const fate = (slice: Slice, index: number): Fate | undefined => fates.get(keyOf(slice, index));
  return {
    place: (slice, index) => (fate(slice, index) === 'lost' ? undefined : placeAsItIs(slice.system, index)),
    count(unwritten) {
      const unplaced = unplacedNotes(
        document,
        entries,
        ({ slice, index, note }) =>
          fate(slice, index) === 'lost' ? reasonOf(slice.system.header, note) : undefined,
        unwritten,
      );
      const kept = [...fates].filter(([key, one]) => one === 'kept' && !unwritten.has(key)).length;
      const notesIn = entries.length;
      return { notesIn, kept, moved: notesIn - kept - unplaced.length, unplaced };
    },
  };
}

type Fate = 'kept' | 'moved' | 'lost';

function fateOf({ slice, note }: PassageEntry, headerFor: (header: Header) => Header): Fate {
  const { header } = slice.system;
  const next = headerFor(header);
  const { string, fret } = note;
  if (sameNeck(header, next)) return 'kept';
  if (string > next.tuning.strings.length) return 'lost';
  if (fret === undefined) return 'kept';
  if (note.kind === 'natural-harmonic' && !isNode(note, header, next)) return 'lost';
  const pitches = (under: Header): string | undefined =>
    fingerboardOf(under)
      .pitches(under.tuning.strings.length - string, fret)
      ?.join();
  const after = pitches(next);
  return after === undefined ? 'lost' : after === pitches(header) ? 'kept' : 'moved';
}

/** Whether a harmonic is still touched at a node: a partial capo shortens its string, and frets count from the nut. */
function isNode({ string, touched = 12 }: NoteReading, before: Header, after: Header): boolean {
  const above = (header: Header): number => touched - stopOf(header, string);
  return above(before) === above(after) || harmonicAt(above(after))?.kind === 'harmonic';
}

/** Where the open string is stopped, counted as the text counts. */
function stopOf(header: Header, string: number): number {
  const board = fingerboardOf(header);
  const index = header.tuning.strings.length - string;
  // Whatever is added to a written number is added to all but 0.
  return board.absoluteFret(index, 0) - (board.absoluteFret(index, 1) - 1);
}
