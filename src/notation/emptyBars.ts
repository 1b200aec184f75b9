import type { StringLine } from './parsedLine';

/**
 * The run of a string line with its bar signs, and dashes for everything else.
 * @example emptyBars(parseLine('G|0-|2h4-|')) // '|--|----|'
 */
export function emptyBars({ tokens }: StringLine): string {
  return tokens.map(({ kind, text, width }) => (kind === 'bar' ? text : '-'.repeat(width))).join('');
}

/** The first of some string lines that is as long as the longest; undefined where there are none. */
export function fullLine(lines: readonly StringLine[]): StringLine | undefined {
  const width = Math.max(0, ...lines.map((line) => line.width));
  return lines.find((line) => line.width === width);
}
