import { formatNoteList } from '../../instrument/noteList';
import { fingerboardOf, soundingSpelling } from '../../notation/headerViews';
import type { System } from '../../notation/tabDocument';
import { zeroLine } from './fret';
import { hertz, lines, listed, pitchText } from './text';

/** The string that a line stands for, and what it sounds open. */
export function labelHover(system: System, line: number): string {
  const { header, reading } = system;
  const placed = reading.strings.find((string) => string.line === line);
  const string = header.tuning.strings[placed?.index ?? -1];
  if (!placed || !string)
    return `The tuning has ${header.tuning.strings.length} strings; this line is none of them`;
  const open = fingerboardOf(header).read(placed.index, 0);
  if (!open.ok) return `**String ${placed.number}**`;
  const names = open.midis.map((midi) => pitchText(midi, soundingSpelling(header)));
  const frequencies = open.midis.map((midi) => hertz(midi, header.referencePitch));
  const tuned = formatNoteList([string]);
  const sounds = listed(names);
  return lines(
    `**String ${placed.number}** · ${tuned}`,
    `Open it sounds ${sounds}, ${listed(frequencies)}`,
    zeroLine(open, header),
  );
}
