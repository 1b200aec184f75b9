import { equal } from '../../music/fraction';
import type { NoteReading, SystemReading } from '../../notation/reading';

/** The notes that begin together, in time order. */
export function onsetsOf(reading: SystemReading): readonly (readonly NoteReading[])[] {
  const groups: NoteReading[][] = [];
  for (const note of reading.notes) {
    const last = groups.at(-1);
    const [first] = last ?? [];
    if (last && first && equal(first.onset, note.onset)) last.push(note);
    else groups.push([note]);
  }
  return groups;
}
