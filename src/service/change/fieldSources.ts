import type { FieldName } from '../../notation/fieldNames';
import type { System, TabDocument } from '../../notation/tabDocument';

/** The fields that a change may have to state. */
export type StatedName = Exclude<FieldName, 'title' | 'by' | 'remark' | 'part' | 'reference pitch'>;

/** The line of a document that says each field; undefined where nothing written does. */
export type FieldSource = Readonly<Record<StatedName, number | undefined>>;

/** What an instrument brings with it, and what it does not. */
const BROUGHT = {
  tuning: undefined,
  capo: undefined,
  frets: undefined,
  'scale length': undefined,
  gauges: undefined,
  fretting: undefined,
};
const NOTHING_WRITTEN: FieldSource = {
  instrument: undefined,
  ...BROUGHT,
  key: undefined,
  meter: undefined,
  tempo: undefined,
  feel: undefined,
};
const NAMES = Object.keys(NOTHING_WRITTEN) as readonly StatedName[];

/** For each system the lines that its fields come from. */
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
    ...(brought ? BROUGHT : {}),
  };
  for (const name of NAMES) {
    const last = group.fields.findLast(({ line }) => line.field === name);
    const says =
      last && !group.problems.some((problem) => problem.kind === 'malformed' && problem.field === last);
    if (says) next[name] = last.lineIndex;
  }
  return next;
}
