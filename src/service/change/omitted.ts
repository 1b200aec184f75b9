import { compare, type Fraction } from '../../music/fraction';
import type { Header } from '../../notation/header';
import { parseLine } from '../../notation/parseLine';
import type { SystemReading } from '../../notation/reading';
import { readSystem, type SystemPosition } from '../../notation/systemReading';

/** The word of the row that names what was left out; a row of a word that the notation does not know is kept text. */
export const OMITTED = 'omitted';

/** A note that was left out. */
export interface OmittedNote {
  readonly name: string;
  /** Quarter notes from the start of the lines. */
  readonly onset: Fraction;
}

/**
 * The lines of a system with rows below them that name what was left out at its column; as many rows as the names need
 * room. Notes of one moment stand together: `E3,C3`.
 */
export function withOmitted(
  lines: readonly string[],
  notes: readonly OmittedNote[],
  header: Header,
  position: SystemPosition,
): readonly string[] {
  if (notes.length === 0) return lines;
  const parsed = lines.map(parseLine);
  const reading = readSystem(parsed, header, position);
  const first = parsed.find((line) => line.kind === 'string' || line.kind === 'row');
  if (first?.kind !== 'string' && first?.kind !== 'row') return lines;
  const byColumn = new Map<number, string[]>();
  for (const { name, onset } of notes) {
    const column = columnOf(reading, onset);
    const names = byColumn.get(column);
    if (names) names.push(name);
    else byColumn.set(column, [name]);
  }
  const rows: string[] = [];
  for (const [column, names] of [...byColumn].sort(([a], [b]) => a - b)) {
    // A space apart, or two names would be one.
    const at = rows.findIndex((row) => row.length < column);
    const row = at < 0 ? '|' : (rows[at] ?? '|');
    const next = row.padEnd(column) + names.join(',');
    if (at < 0) rows.push(next);
    else rows[at] = next;
  }
  const width = Math.max(first.bodyStart, OMITTED.length + 1);
  const padded = lines.map((line, i) => {
    const one = parsed[i];
    if (one?.kind !== 'string' && one?.kind !== 'row') return line;
    return (
      line.slice(0, one.bodyStart) +
      ' '.repeat(Math.max(0, width - first.bodyStart)) +
      line.slice(one.bodyStart)
    );
  });
  return [...padded, ...rows.map((row) => OMITTED.padEnd(width) + row)];
}

/** The first column of the last time in a bar that is no later than a time; a bar sign carries none. */
function columnOf({ columnTimes, bars }: SystemReading, onset: Fraction): number {
  let found = bars[0]?.startColumn ?? 1;
  let latest: Fraction | undefined;
  for (const { startColumn, endColumn } of bars) {
    for (let column = startColumn; column < endColumn; column++) {
      const time = columnTimes[column];
      if (!time || compare(time, onset) > 0 || (latest && compare(time, latest) <= 0)) continue;
      found = column;
      latest = time;
    }
  }
  return found;
}
