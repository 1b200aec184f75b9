import type { LibraryEntry } from './libraryAnswer';

export const GROUPINGS = ['tuning', 'capo', 'key', 'range'] as const;
export type Grouping = (typeof GROUPINGS)[number];

/** Files that have something in common; a file that has several tunings stands under each of them. */
export interface LibraryGroup<File> {
  readonly name: string;
  readonly files: readonly File[];
}

/** Puts files in order under what they have in common. By range: under their lowest note. */
export function groupFiles<File extends { readonly entry: LibraryEntry; readonly name: string }>(
  files: readonly File[],
  by: Grouping,
): readonly LibraryGroup<File>[] {
  const groups = new Map<string, { order: number; files: File[] }>();
  for (const file of files)
    for (const { name, order } of groupsOf(file.entry, by)) {
      const group = groups.get(name);
      if (group) group.files.push(file);
      else groups.set(name, { order, files: [file] });
    }
  return [...groups]
    .sort(([a, one], [b, other]) => one.order - other.order || compareText(a, b))
    .map(([name, group]) => ({
      name,
      files: group.files.sort((a, b) => compareText(titleOf(a), titleOf(b)) || compareText(a.name, b.name)),
    }));
}

function titleOf({ entry, name }: { readonly entry: LibraryEntry; readonly name: string }): string {
  return entry.title || name;
}

/** Stands behind everything that has a value. */
const LAST = 1000;

function groupsOf(entry: LibraryEntry, by: Grouping): readonly { name: string; order: number }[] {
  switch (by) {
    case 'tuning':
      return entry.tunings.map((name) => ({ name, order: 0 }));
    case 'capo':
      return entry.capos.map((capo) =>
        capo === 'none'
          ? { name: 'no capo', order: -1 }
          : { name: `capo ${capo}`, order: Number.parseInt(capo, 10) },
      );
    case 'key':
      if (entry.keys.length === 0) return [{ name: 'no key written', order: LAST }];
      return entry.keys.map((name) => ({ name, order: 0 }));
    case 'range':
      return entry.range
        ? [{ name: `lowest note ${entry.range.low}`, order: entry.range.lowMidi }]
        : [{ name: 'no notes', order: LAST }];
  }
}

/** As people order names: by letter in any case, numbers by their value. */
function compareText(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true, sensitivity: 'base' });
}
