import type { System } from '../../notation/tabDocument';
import { counted } from '../typing/putFrets';

/** The system under a count row that pins all its times; undefined where it has one, or no row can say them. */
export function countedSystem(system: System): System | undefined {
  if (system.reading.timing === 'counted') return undefined;
  const [bar] = system.reading.bars;
  const [note] = system.reading.notes;
  const column = note?.column ?? bar?.startColumn;
  const onset = note?.onset ?? bar?.onset;
  return column === undefined || !onset ? undefined : counted(system, column, onset);
}
