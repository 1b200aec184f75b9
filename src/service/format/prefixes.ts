import { widthOfText } from '../../notation/columns';
import type { ParsedLine } from '../../notation/parsedLine';
import type { Draft } from './formatSystem';

interface Prefix {
  /** Offset at which the label or the row's word begins. */
  readonly start: number;
  readonly text: string;
  /** Columns of label or word. */
  readonly width: number;
  /** Offset of the first bar line. */
  readonly end: number;
}

/**
 * Labels and words of rows begin in one column, and the first bar lines stand under each other: where most of them stand
 * now if there is room enough, else right behind the longest, a space between where it has one.
 */
export function withPrefixes({ lines }: Draft): readonly (readonly string[])[] {
  return aligned(lines, false);
}

/** The same where the first bar lines of most lines stay in their column; nothing otherwise. */
export function withPrefixesInPlace({ lines }: Draft): readonly (readonly string[])[] {
  return aligned(lines, true);
}

function aligned(lines: readonly ParsedLine[], inPlace: boolean): readonly (readonly string[])[] {
  const prefixes = lines.map(prefixOf);
  const known = prefixes.filter((prefix) => prefix !== undefined);
  if (known.length === 0) return [];
  const indent = commonest(known.map(({ start }) => start));
  const longest = Math.max(...known.map(({ width }) => width));
  const gap = Math.min(
    1,
    ...known
      .filter(({ width }) => width === longest)
      .map(({ start, end, text }) => end - start - text.length),
  );
  const usual = commonest(known.map(({ start, width, end, text }) => end - text.length + width - start));
  const room = Math.max(longest + gap, usual);
  const place = commonest(known.map(({ width, text, end }) => end - text.length + width));
  if (inPlace && indent + room !== place) return [];
  return [
    lines.map((line, i) => {
      const prefix = prefixes[i];
      if (!prefix) return line.text;
      const { text, width, end } = prefix;
      return ' '.repeat(indent) + text + ' '.repeat(room - width) + line.text.slice(end);
    }),
  ];
}

function prefixOf(line: ParsedLine): Prefix | undefined {
  if (line.kind === 'string') {
    const { start, text } = line.label;
    return { start, text, width: widthOfText(text), end: line.bodyStart };
  }
  if (line.kind !== 'row') return undefined;
  const text = line.text.slice(line.wordStart, line.wordEnd);
  return { start: line.wordStart, text, width: widthOfText(text), end: line.bodyStart };
}

/** The number that is there most often; of equals the least. */
function commonest(numbers: readonly number[]): number {
  let best = numbers[0] ?? 0;
  let most = 0;
  for (const number of numbers) {
    let times = 0;
    for (const other of numbers) if (other === number) times += 1;
    if (times > most || (times === most && number < best)) [best, most] = [number, times];
  }
  return best;
}
