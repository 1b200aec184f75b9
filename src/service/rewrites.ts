import { writeCountAction } from '../checks/writeCountAction';
import type { Range, System, TabDocument } from '../notation/tabDocument';
import type { Mend } from './records';

/** Changes on offer where nothing is wrong: the rhythm of a system that was worked out, written as a count row. */
export function rewrites(document: TabDocument, range: Range): readonly Mend[] {
  const systems = new Set<System>();
  for (let line = range.start.line; line <= range.end.line; line++) {
    const system = document.systemAt(line);
    if (system) systems.add(system);
  }
  return [...systems].flatMap((system) => writeCountAction(system) ?? []);
}
