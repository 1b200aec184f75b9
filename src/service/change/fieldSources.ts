import type { FieldName } from '../../notation/fieldNames';
import type { System, TabDocument } from '../../notation/tabDocument';

/** The fields that a change may have to state. */
export type StatedName = Extract<FieldName, 'tuning' | 'capo' | 'key'>;

/** The line of a document that says each field; undefined where nothing written does. */
export type FieldSource = Readonly<Record<StatedName, number | undefined>>;

const NOTHING_WRITTEN: FieldSource = { tuning: undefined, capo: undefined, key: undefined };
const NAMES: readonly StatedName[] = ['tuning', 'capo', 'key'];

/** For each system the lines that its tuning, capo and key come from. */
export function fieldSources(document: TabDocument): Map<System, FieldSource> {
  const found = new Map<System, FieldSource>();
  const byPart = new Map<string | undefined, FieldSource>();
  const groups = [...document.fieldGroups];
  for (const system of document.systems) {
    for (let group = groups[0]; group && startOf(group) < system.firstLine; group = groups[0]) {
      const { part } = group.after;
      // A new part begins with the fields that stood before the first one.
      const before = byPart.get(part) ?? byPart.get(undefined) ?? NOTHING_WRITTEN;
      byPart.set(part, after(group, before));
      groups.shift();
    }
    const { part } = system.header;
    found.set(system, byPart.get(part) ?? byPart.get(undefined) ?? NOTHING_WRITTEN);
  }
  return found;
}

type Group = TabDocument['fieldGroups'][number];

function startOf(group: Group): number {
  return group.fields[0]?.lineIndex ?? 0;
}

function after(group: Group, before: FieldSource): FieldSource {
  const brought = group.after.instrument !== group.before.instrument;
  const next: Record<StatedName, number | undefined> = {
    ...before,
    ...(brought ? { tuning: undefined, capo: undefined } : {}),
  };
  for (const name of NAMES) {
    const last = group.fields.findLast(({ line }) => line.field === name);
    const says =
      last && !group.problems.some((problem) => problem.kind === 'malformed' && problem.field === last);
    if (says) next[name] = last.lineIndex;
  }
  return next;
}
