import type { TabDocument } from '../../notation/tabDocument';
import { entriesOf, type PassageEntry } from './placing';
import type { Slice } from './slices';

/**
 * Notes that what joins them to the note before could no longer bring, where notes move by different amounts: a
 * hammer-on that would not rise, a pull-off that would not fall, a slide to the same fret. What is joined to such a note
 * goes with it.
 */
export function lostJoins(
  document: TabDocument,
  slices: readonly Slice[],
  shift: (entry: PassageEntry) => number,
): ReadonlyMap<PassageEntry, string> {
  const lost = new Map<PassageEntry, string>();
  const bySlice = new Map<Slice, Map<number, PassageEntry>>();
  for (const entry of entriesOf(document, slices)) {
    let known = bySlice.get(entry.slice);
    if (!known) bySlice.set(entry.slice, (known = new Map<number, PassageEntry>()));
    known.set(entry.index, entry);
    const { joinedFrom } = entry.note;
    const from = joinedFrom === undefined ? undefined : known.get(joinedFrom);
    if (!from) continue;
    if (lost.has(from)) {
      lost.set(entry, 'the note that it is joined to has no place');
      continue;
    }
    const [a] = from.note.pitches;
    const [b] = entry.note.pitches;
    if (!a || !b) continue;
    const before = Math.sign(b.midi - a.midi);
    const after = Math.sign(b.midi + shift(entry) - a.midi - shift(from));
    if (before !== after)
      lost.set(
        entry,
        'in the new mode it would no longer lie on the same side of the note that it is joined to',
      );
  }
  return lost;
}
