import { equal, type Fraction } from '../../music/fraction';
import { columnsFrom } from '../../notation/columns';
import type { StringLine } from '../../notation/parsedLine';
import type { NoteReading } from '../../notation/reading';
import type { System } from '../../notation/tabDocument';

/** The notes that begin at a moment, each with its index in the reading. */
export function notesAt(
  { reading }: Pick<System, 'reading'>,
  time: Fraction,
): readonly { readonly index: number; readonly note: NoteReading }[] {
  return reading.notes.flatMap((note, index) => (equal(note.onset, time) ? [{ index, note }] : []));
}

/**
 * Where a new sign of a moment stands: under the notes that begin there, at the column that most of those without a
 * second digit have; else at the cursor's own column.
 */
export function columnFor(notes: readonly NoteReading[], column: number): number {
  const plain = notes.filter(({ numberEnd, numberStart }) => numberEnd - numberStart === 1);
  const votes = new Map<number, number>();
  for (const note of plain.length > 0 ? plain : notes)
    votes.set(note.column, (votes.get(note.column) ?? 0) + 1);
  let best = column;
  let most = 0;
  for (const [at, count] of votes) {
    if (count <= most) continue;
    [best, most] = [at, count];
  }
  return best;
}

/** What stands at a column of a string line, and on both its sides. */
export interface Spot {
  /** UTF-16 offset of the column. */
  readonly offset: number;
  readonly sign: string;
  readonly before: string;
  readonly after: string;
}

/** Undefined where the line's run does not reach the column. */
export function spotAt(line: StringLine, column: number): Spot | undefined {
  const columnAt = columnsFrom(line.text, line.bodyStart);
  for (let offset = line.bodyStart; offset < line.bodyEnd; offset++) {
    if (columnAt(offset) !== column) continue;
    const { text } = line;
    return {
      offset,
      sign: text[offset] ?? '',
      before: text[offset - 1] ?? '',
      after: offset + 1 < line.bodyEnd ? (text[offset + 1] ?? '') : '',
    };
  }
  return undefined;
}
