import { compare, type Fraction } from '../../music/fraction';
import { parseLine } from '../../notation/parseLine';
import { readSystem, type SystemPosition } from '../../notation/systemReading';
import type { Header } from '../../notation/header';
import type { Place } from '../../notation/tabDocument';

/** The lines that were written last. */
export interface LastWritten {
  readonly lines: readonly string[];
  readonly header: Header;
  readonly position: SystemPosition;
  /** When the writing ended, in quarter notes from the start of the lines. */
  readonly end: Fraction;
  /** The string of its last sign. */
  readonly string: number;
}

/**
 * Where a player writes on: the first column at the end of what was written or behind it, on the string of its last note;
 * behind the last bar sign where the bars are full.
 * @param firstLine the line on which the lines begin
 */
export function goesOn({ lines, header, position, end, string }: LastWritten, firstLine: number): Place {
  const parsed = lines.map(parseLine);
  const { strings, bars, columnTimes } = readSystem(parsed, header, position);
  const at = strings.find(({ number }) => number === string)?.line ?? 0;
  const line = parsed[at];
  const place = (character: number): Place => ({ line: firstLine + at, character });
  if (line?.kind !== 'string') return place(0);
  for (const { startColumn, endColumn } of bars) {
    for (let column = startColumn; column < endColumn; column++) {
      const time = columnTimes[column];
      if (time && compare(time, end) >= 0) return place(line.bodyStart + column);
    }
  }
  return place(line.bodyEnd);
}
