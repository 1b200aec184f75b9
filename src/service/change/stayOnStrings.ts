import type { Header } from '../../notation/header';
import { fingerboardOf } from '../../notation/headerViews';
import type { NotePlace } from '../../notation/print/pieces';
import type { NoteReading } from '../../notation/reading';
import type { TabDocument } from '../../notation/tabDocument';
import type { UnplacedNote } from '../serviceApi';
import { entriesOf, sameNeck, unplacedNotes, type PassageEntry } from './placing';
import { placeAsItIs } from './rewrite';
import type { Slice } from './slices';

/** A passage whose notes all stay on their strings and frets under other fields. */
export interface Staying {
  readonly entries: readonly PassageEntry[];
  /** How many of them still sound the same pitch. */
  readonly kept: number;
  readonly unplaced: readonly UnplacedNote[];
  readonly place: (slice: Slice, index: number) => NotePlace | undefined;
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
  const dropped = new Set<string>();
  let kept = 0;
  const lost = (entry: PassageEntry): string | undefined => {
    const { slice, index, note } = entry;
    const { header } = slice.system;
    const next = headerFor(header);
    if (sameNeck(header, next)) {
      kept += 1;
      return undefined;
    }
    const { strings } = next.tuning;
    const midis =
      note.fret === undefined ? [] : fingerboardOf(next).pitches(strings.length - note.string, note.fret);
    if (note.string > strings.length || midis === undefined) {
      dropped.add(`${slice.index}:${index}`);
      return reasonOf(header, note);
    }
    const before = fingerboardOf(header).pitches(header.tuning.strings.length - note.string, note.fret ?? 0);
    if (note.fret === undefined || before?.join() === midis.join()) kept += 1;
    return undefined;
  };
  const unplaced = unplacedNotes(document, entries, lost);
  return {
    entries,
    kept,
    unplaced,
    place: (slice, index) =>
      dropped.has(`${slice.index}:${index}`) ? undefined : placeAsItIs(slice.system, index),
  };
}
