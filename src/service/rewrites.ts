import { writeCountAction } from '../checks/writeCountAction';
import { writeMissingStrings } from '../checks/support/missingStrings';
import type { Range, System, TabDocument } from '../notation/tabDocument';
import { relabelAtField } from './mends/relabelEverywhere';
import type { Mend } from './records';

/**
 * Changes on offer where nothing is wrong: the rhythm that was worked out, as a count row; strings that a system leaves out; and, at a field that changes the tuning, new labels for all
 * lines that have it.
 */
export function rewrites(document: TabDocument, range: Range): readonly Mend[] {
  const systems = new Set<System>();
  for (let line = range.start.line; line <= range.end.line; line++) {
    const system = document.systemAt(line);
    if (system) systems.add(system);
  }
  return [
    ...[...systems].flatMap((system) => writeCountAction(system) ?? []),
    ...[...systems].flatMap((system) => writeMissingStrings(system) ?? []),
    ...relabelAtField(document, range),
  ];
}
