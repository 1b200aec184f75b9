import { readChordName } from '../../music/chord/readChordName';
import type { TabDocument } from '../../notation/tabDocument';
import { columnAt } from '../locate';
import type { Place } from '../records';

/**
 * The chord's name at a place: in a `chords` row the one that the cursor touches, anywhere else in the system the one
 * that holds in that column. As it is written, which is as played under a full capo.
 * @returns undefined outside systems, before the first name, and where what stands there names no chord
 * @example chordAt(document, { line: 9, character: 12 }) // 'Gadd9'
 */
export function chordAt(document: TabDocument, place: Place): string | undefined {
  const system = document.systemAt(place.line);
  if (!system) return undefined;
  const line = place.line - system.firstLine;
  const rows = system.reading.rows.filter(({ row }) => row === 'chords');
  const touched = rows
    .find((row) => row.line === line)
    ?.marks.find(({ start, end }) => start <= place.character && place.character <= end);
  const column = columnAt(system, place);
  const name =
    touched?.text ??
    (column === undefined
      ? undefined
      : rows.flatMap(({ marks }) => marks.findLast((mark) => mark.column <= column) ?? [])[0]?.text);
  if (name === undefined) return undefined;
  const read = readChordName(name);
  return read.ok && read.value.root ? name : undefined;
}
