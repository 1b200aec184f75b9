/**
 * The line of the heading in the help page that is a diagnostic's code, from 0; 0 when there is none.
 *
 * @example headingLine('# Help\n\n## capo-value\n', 'capo-value') // 2
 */
export function headingLine(text: string, code: string): number {
  const lines = text.split(/\r\n?|\n/);
  return Math.max(
    0,
    lines.findIndex((line) => /^#+\s+(.*?)\s*$/.exec(line)?.[1] === code),
  );
}
