import { add, subtract, type Fraction } from '../../music/fraction';
import { formatNoteName } from '../../music/noteName';
import { columnsFrom } from '../../notation/columns';
import type { Place, Range, System, TabDocument } from '../../notation/tabDocument';
import { rangeIn } from '../locate';
import type { ServiceError } from '../serviceApi';
import type { SoundPattern } from './findAnswer';
import { momentsOf, type PitchedNote } from './soundIndex';

/**
 * What is selected, as something to look for: the notes that the ranges touch. A range over several lines of one system
 * means its columns on these lines; one over several systems goes from its start to its end on all strings. Several
 * ranges, as of a column selection, are taken together.
 *
 * Errors, each with what to do: nothing selected, or notes of several parts.
 */
export function soundPattern(document: TabDocument, ranges: readonly Range[]): SoundPattern | ServiceError {
  const parts = new Set<string | undefined>();
  const moments: (readonly PitchedNote[])[] = [];
  const onsets: Fraction[] = [];
  const places: Range[][] = [];
  for (const system of document.systems) {
    const holds = ranges.map((range) => inRange(system, range)).filter((hold) => hold !== undefined);
    if (holds.length === 0) continue;
    const { part, onset } = document.placeOf(system);
    for (const all of momentsOf(system)) {
      const own = all.filter(({ note }) => holds.some((hold) => hold(note.line, note.column)));
      const [first] = own;
      if (!first) continue;
      parts.add(part);
      moments.push(own);
      onsets.push(add(onset, first.note.onset));
      places.push(own.map(({ note }) => rangeIn(system, note)));
    }
  }
  const [start] = onsets;
  if (!start) return { error: 'Select the notes to look for: two or more, on one string or over several.' };
  if (parts.size > 1)
    return { error: 'The selection holds notes of several parts; select notes of one part.' };
  return {
    moments: moments.map((notes) => notes.map(({ midi }) => midi)),
    onsets: onsets.map((onset) => subtract(onset, start)),
    together: moments.some((notes) => notes.length > 1),
    name: moments.map((notes) => topName(notes)).join(' '),
    places,
  };
}

function topName(notes: readonly PitchedNote[]): string {
  const [pitch] = notes.at(-1)?.note.pitches ?? [];
  return pitch ? formatNoteName(pitch.name) : '';
}

type Holds = (line: number, column: number) => boolean;

/** Which notes of a system a range holds; `line` counts from the system's first. Undefined for none. */
function inRange(system: System, { start, end }: Range): Holds | undefined {
  const last = system.firstLine + system.lines.length - 1;
  if (end.line < system.firstLine || start.line > last) return undefined;
  if (start.line === end.line && start.character === end.character) return undefined;
  const [from, to] = [columnOf(system, start), columnOf(system, end)];
  const top = start.line - system.firstLine;
  const bottom = end.line - system.firstLine;
  if (top >= 0 && end.line <= last) {
    // Whole lines, the line end of the last one among them or not.
    if (start.character === 0 && isLineEnd(system, end) && top < bottom)
      return (line) => line >= top && line <= bottom - (end.character === 0 ? 1 : 0);
    // Within one system a selection drawn over several lines means its columns, whichever way it was drawn.
    const [low, high] = from <= to ? [from, to] : [to, from];
    return (line, column) => line >= top && line <= bottom && column >= low && column < high;
  }
  return (_, column) => (top < 0 || column >= from) && (end.line > last || column < to);
}

function isLineEnd(system: System, { line, character }: Place): boolean {
  const text = system.lines[line - system.firstLine]?.text;
  return character === 0 || (text !== undefined && character >= text.length);
}

/** The column of a place on a line of a system; before the first bar sign 0, past the line's end its width. */
function columnOf(system: System, { line, character }: Place): number {
  const own = system.lines[line - system.firstLine];
  if (own?.kind !== 'string' && own?.kind !== 'row') return 0;
  if (character <= own.bodyStart) return 0;
  return columnsFrom(own.text, own.bodyStart)(Math.min(character, own.text.length));
}
