import { compare, ZERO, type Fraction } from '../../music/fraction';
import type { Header } from '../../notation/header';
import { parseLine } from '../../notation/parseLine';
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
  const { columnTimes, bars } = readSystem(parsed, header, position);
  const first = parsed.find((line) => line.kind === 'string' || line.kind === 'row');
  if (first?.kind !== 'string' && first?.kind !== 'row') return lines;
  const start = bars[0]?.startColumn ?? 1;
  const byColumn = new Map<number, string[]>();
  for (const { name, onset } of notes) {
    const column = Math.max(start, columnOf(columnTimes, onset));
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

/** The last column that begins no later than a time. */
function columnOf(times: readonly Fraction[], onset: Fraction): number {
  let found = 0;
  times.forEach((time, column) => {
    if (compare(time, onset) <= 0 && (column === 0 || compare(times[found] ?? ZERO, time) < 0))
      found = column;
  });
  return found;
}
