import type { System } from '../../notation/tabDocument';
import type { ServiceError } from '../serviceApi';
import { columnAt } from '../locate';
import { systemOf } from '../typing/putFrets';
import { addColumn, removeColumn } from '../typing/room';
import { saysTheSame } from '../typing/sameMusic';
import type { ColumnsDone } from './columns';
import { countedSystem } from './countedSystem';
import { placeOf, spotAt } from './cursorSpot';
import type { ColumnsRequest } from './columnsRequest';

const NOTHING = { line: -1, before: { start: 0, end: 0 }, after: { start: 0, end: 0 } };

/** Puts a column of dashes into a system, or takes an empty one out; every note keeps its time. */
export function moveColumn(system: System, { action, range }: ColumnsRequest): ColumnsDone | ServiceError {
  const column = columnAt(system, range.start);
  const inBar = system.reading.bars.some(
    ({ startColumn, endColumn }) =>
      column !== undefined &&
      column >= startColumn &&
      column <= endColumn - (action === 'removeColumn' ? 1 : 0),
  );
  if (column === undefined || !inBar) return { error: 'Place the cursor on a column between two bar signs.' };
  const change = (one: System): System | 'full' => {
    const texts = action === 'insertColumn' ? addColumn(one.lines, column) : removeColumn(one.lines, column);
    return texts ? systemOf(one, texts) : 'full';
  };
  for (const from of [system, countedSystem(system)]) {
    const now = from && change(from);
    if (now === 'full') return { error: 'Something stands in this column, so it stays: clear it first.' };
    if (!from || !now || !saysTheSame(from, now, NOTHING, false)) continue;
    const lines = now.lines.map(({ text }) => text);
    return {
      from: system.firstLine,
      count: system.lines.length,
      lines,
      said: action === 'insertColumn' ? 'A column is put in.' : 'A column is taken out.',
      notesIn: system.reading.notes.length,
      counted: from !== system,
      goesOn: placeOf(system, [lines], system.firstLine, spotAt(system, range.start)),
    };
  }
  return {
    error: 'Notes would begin at another time, so nothing was changed: write the count of these bars first.',
  };
}
