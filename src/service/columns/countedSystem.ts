import type { System } from '../../notation/tabDocument';
import { counted } from '../typing/putFrets';

/** The system under a count row that pins all its times; undefined where it has one, or no row can say
 * them and those of what other rows say. */
export function countedSystem(system: System): System | undefined {
  if (system.reading.timing === 'counted') return undefined;
  const [bar] = system.reading.bars;
  const [note] = system.reading.notes;
  const column = note?.column ?? bar?.startColumn;
  const onset = note?.onset ?? bar?.onset;
  const under = column === undefined || !onset ? undefined : counted(system, column, onset);
  return under && marksOf(under) === marksOf(system) ? under : undefined;
}

/** What the rows say, and when. */
function marksOf({ reading }: System): string {
  return reading.rows
    .filter(({ row }) => row !== 'count')
    .flatMap(({ word, marks }) => marks.map(({ text, onset }) => `${word} ${text} ${onset.n}/${onset.d}`))
    .join('\n');
}
