import { compare, equal, fraction, subtract, type Fraction } from '../../music/fraction';
import type { NoteReading } from '../../notation/reading';
import type { System } from '../../notation/tabDocument';
import type { ColumnsRequest } from './columnsRequest';

/**
 * How far notes go, in quarter notes, less than zero for sooner: a beat of the meter, or from the first note's column to
 * the next one with another time. Undefined where no column stands before the first.
 */
export function stepOf(
  { header, reading }: System,
  first: NoteReading,
  step: ColumnsRequest['step'],
  later: boolean,
): Fraction | undefined {
  if (step === 'beat') return fraction(later ? 4 : -4, header.meter.lower);
  const { columnTimes, length } = reading;
  const beyond = later
    ? (columnTimes.find((time, column) => column > first.column && compare(time, first.onset) > 0) ?? length)
    : columnTimes.slice(0, first.column).findLast((time) => compare(time, first.onset) < 0);
  return beyond && subtract(beyond, first.onset);
}

/** Index of the bar that has a moment; one past the last for what is later than all. */
export function barWith({ reading }: System, time: Fraction): number {
  if (compare(time, reading.length) >= 0) return reading.bars.length;
  return reading.bars.findLastIndex(({ onset }) => compare(onset, time) <= 0);
}

/** The cell of a column, counted through all bars without their signs; undefined on a bar sign. */
export function cellAt({ reading }: System, column: number): number | undefined {
  let before = 0;
  for (const { startColumn, endColumn } of reading.bars) {
    if (column >= startColumn && column < endColumn) return before + column - startColumn;
    before += endColumn - startColumn;
  }
  return undefined;
}

/** The cell of a moment, the nearest one to a column where several have it. */
export function cellWith(system: System, time: Fraction, near: number): number | undefined {
  const { columnTimes } = system.reading;
  const columns = columnTimes.flatMap((own, column) => (equal(own, time) ? [column] : []));
  columns.sort((a, b) => Math.abs(a - near) - Math.abs(b - near));
  for (const column of columns) {
    const cell = cellAt(system, column);
    if (cell !== undefined) return cell;
  }
  return undefined;
}
