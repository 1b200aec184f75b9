/**
 * Rows of cells as lines of aligned columns, two spaces apart, without spaces at the end of a line.
 * @param right indexes of the columns of numbers, which end together
 * @example alignedColumns([['a', 'bar'], ['long', 'b']]) // 'a     bar\nlong  b'
 */
export function alignedColumns(rows: readonly (readonly string[])[], right: readonly number[] = []): string {
  const widths: number[] = [];
  for (const row of rows)
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  return rows
    .map((row) =>
      row
        .map((cell, i) => (right.includes(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
