import type { CellNote } from './cells';

/** A note on one line of a system. */
export interface LineNote {
  /** Index of its string line in the system. */
  readonly line: number;
  readonly cell: CellNote;
}

/**
 * The column at which each note begins. Notes begin together when their first digits, or last digits, or opening signs
 * stand in one column, or the opening sign of one over the digit of another; together they stand where they share a
 * column, a bracketed one where the unbracketed ones do.
 * @param notes any order
 * @returns for each note its column
 */
export function onsetColumns(notes: readonly LineNote[]): number[] {
  const group = notes.map((_, i) => i);
  const find = (i: number): number => {
    let root = i;
    while (group[root] !== root) root = group[root] ?? root;
    return root;
  };
  // What already stands at a column: the note there by its first digit, last digit and opening sign.
  const firsts = new Map<number, number>();
  const lasts = new Map<number, number>();
  const opens = new Map<number, number>();
  const join = (i: number, other: number | undefined): void => {
    if (other === undefined || notes[other]?.line === notes[i]?.line) return;
    const a = find(i);
    const b = find(other);
    if (a !== b) group[Math.max(a, b)] = Math.min(a, b);
  };
  notes.forEach(({ cell }, i) => {
    join(i, firsts.get(cell.firstColumn));
    join(i, lasts.get(cell.lastColumn));
    join(i, opens.get(cell.firstColumn));
    join(i, opens.get(cell.lastColumn));
    firsts.set(cell.firstColumn, i);
    lasts.set(cell.lastColumn, i);
    if (cell.openColumn !== undefined) {
      join(i, opens.get(cell.openColumn));
      join(i, firsts.get(cell.openColumn));
      join(i, lasts.get(cell.openColumn));
      opens.set(cell.openColumn, i);
    }
  });
  const columns = new Map<number, number>();
  const members = new Map<number, LineNote[]>();
  notes.forEach((note, i) => {
    const root = find(i);
    const list = members.get(root);
    if (list) list.push(note);
    else members.set(root, [note]);
  });
  for (const [root, list] of members) columns.set(root, sharedColumn(list.map((note) => note.cell)));
  return notes.map((_, i) => columns.get(find(i)) ?? 0);
}

/** Where notes that begin together stand. */
function sharedColumn(cells: readonly CellNote[]): number {
  const plain = cells.filter((cell) => cell.openColumn === undefined);
  if (plain.length === 0) return Math.min(...cells.map((cell) => cell.openColumn ?? cell.firstColumn));
  const firsts = plain.map((cell) => cell.firstColumn);
  const first = Math.min(...firsts);
  if (firsts.every((column) => column === first)) return first;
  // Aligned by their last digits: they stand where the single digits do.
  const last = plain[0]?.lastColumn ?? first;
  return plain.every((cell) => cell.lastColumn === last) ? last : first;
}
