/** A text that is written over some columns in place of what stands there. */
export interface Written {
  /** Column where it begins. */
  readonly column: number;
  /** Columns that it has so far. */
  readonly width: number;
  /** Columns that it takes. */
  readonly needs: number;
}

/** Where each column of a system goes: the same for all its lines. */
export type NewColumn = (column: number) => number;

/**
 * Makes room for texts over the columns of a system, equally on all lines and as little as will do. A text that needs
 * more than it has gets the missing columns behind its last one; what is shorter keeps its columns.
 * @param width columns of the system
 * @returns the new place of each column; columns past the width go on as before
 * @example widened(4, [{ column: 1, width: 1, needs: 2 }])(2) // 3
 */
export function widened(width: number, texts: readonly Written[]): NewColumn {
  const widths = new Uint16Array(width).fill(1);
  const ordered = [...texts].sort((a, b) => a.column + a.width - (b.column + b.width) || b.needs - a.needs);
  for (const { column, width: own, needs } of ordered) {
    const end = column + own;
    const has = widths.subarray(column, end).reduce((sum, one) => sum + one, 0);
    if (has < needs) widths[end - 1] = (widths[end - 1] ?? 1) + needs - has;
  }
  const starts = new Uint32Array(width + 1);
  widths.forEach((one, column) => (starts[column + 1] = (starts[column] ?? 0) + one));
  const total = starts[width] ?? 0;
  return (column) => (column <= width ? (starts[Math.max(0, column)] ?? 0) : total + column - width);
}
