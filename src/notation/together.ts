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
  // Plain arrays by column and by note: this runs on every key.
  let width = 0;
  for (const { cell } of notes) width = Math.max(width, cell.lastColumn + 1, (cell.openColumn ?? 0) + 1);
  const group = Int32Array.from(notes, (_, i) => i);
  const find = (i: number): number => {
    let root = i;
    for (let up = group[root]; up !== undefined && up !== root; up = group[root]) root = up;
    return root;
  };
  // What already stands at a column: the note there by its first digit, last digit and opening sign.
  const firsts = new Int32Array(width).fill(NOTHING);
  const lasts = new Int32Array(width).fill(NOTHING);
  const opens = new Int32Array(width).fill(NOTHING);
  const join = (i: number, other = NOTHING): void => {
    if (other === NOTHING || notes[other]?.line === notes[i]?.line) return;
    const a = find(i);
    const b = find(other);
    if (a !== b) group[Math.max(a, b)] = Math.min(a, b);
  };
  notes.forEach(({ cell }, i) => {
    join(i, firsts[cell.firstColumn]);
    join(i, lasts[cell.lastColumn]);
    join(i, opens[cell.firstColumn]);
    join(i, opens[cell.lastColumn]);
    firsts[cell.firstColumn] = i;
    lasts[cell.lastColumn] = i;
    if (cell.openColumn !== undefined) {
      join(i, opens[cell.openColumn]);
      join(i, firsts[cell.openColumn]);
      join(i, lasts[cell.openColumn]);
      opens[cell.openColumn] = i;
    }
  });
  const columns = notes.map(({ cell }) => cell.openColumn ?? cell.firstColumn);
  const members = new Map<number, number[]>();
  notes.forEach((_, i) => {
    const root = find(i);
    if (root === i) return;
    const list = members.get(root);
    if (list) list.push(i);
    else members.set(root, [root, i]);
  });
  for (const list of members.values()) {
    const column = sharedColumn(list.flatMap((i) => notes[i]?.cell ?? []));
    for (const i of list) columns[i] = column;
  }
  return columns;
}

/** No note stands at this column yet. */
const NOTHING = -1;

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
