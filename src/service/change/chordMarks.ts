import { compare } from '../../music/fraction';
import { nameChord } from '../../music/chord/nameChord';
import { readChordName } from '../../music/chord/readChordName';
import type { Header } from '../../notation/header';
import { playedContext } from '../../notation/chordContext';
import { fingerboardOf, capoShift } from '../../notation/headerViews';
import type { RowLine, RowMark } from '../../notation/parsedLine';
import type { NoteReading } from '../../notation/reading';
import type { System } from '../../notation/tabDocument';
import type { Slice } from './slices';

/** The marks of a slice's chord rows that name a chord. */
export function chordMarksIn({ system, firstBar, lastBar }: Slice): { row: RowLine; mark: RowMark }[] {
  const { bars } = system.reading;
  const from = bars[firstBar]?.startColumn ?? 0;
  const to = bars[lastBar]?.endColumn ?? Infinity;
  return system.lines.flatMap((row) =>
    row.kind === 'row' && row.row === 'chords'
      ? row.marks
          .filter(({ column, text }) => column >= from - 1 && column < to && namesChord(text))
          .map((mark) => ({ row, mark }))
      : [],
  );
}

/** `N.C.` and words of the writer's own name no chord. */
function namesChord(text: string): boolean {
  const read = readChordName(text);
  return read.ok && read.value.root !== undefined;
}

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
  const sounding = reading.notes.filter(
    (note) =>
      compare(note.onset, to) < 0 &&
      (compare(note.onset, from) >= 0 || note.ends === undefined || compare(note.ends, from) > 0),
  );
  const shift = capoShift(header);
  const midis = [...sounding]
    .sort((a, b) => b.string - a.string)
    .flatMap((note) => pitchesUnder(system.header, header, note))
    .map((midi) => midi - shift);
  const naming = nameChord(midis, playedContext(header));
  return naming.kind === 'chord' || naming.kind === 'power' ? naming.names[0]?.name : undefined;
}

/** What a note sounds when its string and fret stay; a harmonic stays as far above its string as it was. */
function pitchesUnder(before: Header, after: Header, { string, fret, pitches }: NoteReading): number[] {
  if (fret === undefined) return [];
  const stopped = (header: Header): readonly number[] | undefined =>
    fingerboardOf(header).pitches(header.tuning.strings.length - string, fret);
  const [first] = stopped(before) ?? [];
  const [sounding] = pitches;
  const above = first === undefined || !sounding ? 0 : sounding.midi - first;
  return (stopped(after) ?? []).map((midi) => midi + above);
}
