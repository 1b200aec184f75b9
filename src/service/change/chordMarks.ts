import { isReentrant } from '../../instrument/isReentrant';
import { compare } from '../../music/fraction';
import { nameChord } from '../../music/chord/nameChord';
import type { Header } from '../../notation/header';
import { fingerboardOf, playedSpelling, capoShift } from '../../notation/headerViews';
import type { RowLine, RowMark } from '../../notation/parsedLine';
import type { System } from '../../notation/tabDocument';

/**
 * The name, as played, of what sounds from a chord mark to the next when the strings and frets of a system stay and
 * its fields become others; undefined when nothing that has a name sounds.
 */
export function chordUnder(system: System, header: Header, row: RowLine, mark: RowMark): string | undefined {
  const { reading } = system;
  const at = reading.rows.find(({ line }) => system.lines[line] === row);
  const i = at?.marks.findIndex((placed) => placed.start === mark.start) ?? -1;
  const from = at?.marks[i]?.onset;
  if (!from) return undefined;
  const to = at.marks[i + 1]?.onset ?? reading.length;
  const board = fingerboardOf(header);
  const shift = capoShift(header);
  const sounding = reading.notes.filter(
    (note) =>
      compare(note.onset, to) < 0 &&
      (compare(note.onset, from) >= 0 || note.ends === undefined || compare(note.ends, from) > 0),
  );
  const midis = [...sounding]
    .sort((a, b) => b.string - a.string)
    .flatMap((note) =>
      note.fret === undefined
        ? []
        : (board.pitches(header.tuning.strings.length - note.string, note.fret) ?? []),
    )
    .map((midi) => midi - shift);
  const naming = nameChord(midis, { ...playedSpelling(header), reentrant: isReentrant(header.tuning) });
  return naming.kind === 'chord' || naming.kind === 'power' ? naming.names[0]?.name : undefined;
}
