import type { BarList, BarListLine } from './barList';

/**
 * Two systems' bars in one: strings by their number, rows by their word. Lines that only one of them has are empty
 * in the bars of the other.
 */
export function mergeLists(first: BarList, second: BarList): BarList {
  const strings = (list: BarList): BarListLine[] => list.lines.filter(({ kind }) => kind === 'string');
  const top = (list: BarList): BarListLine[] => {
    const at = list.lines.findIndex(({ kind }) => kind === 'string');
    return list.lines.slice(0, at < 0 ? list.lines.length : at);
  };
  const below = (list: BarList): BarListLine[] =>
    list.lines.filter((line) => line.kind === 'row' && !top(list).includes(line));
  const byNumber = (a: BarListLine, b: BarListLine): number => Number(a.key) - Number(b.key);
  const lines = [
    ...union(top(first), top(second)),
    ...union(strings(first), strings(second)).sort(byNumber),
    ...union(below(first), below(second)),
  ];
  return {
    // A row that stands above in one and below in the other is one row.
    lines: evenHeads(lines.filter(({ key }, at) => lines.findIndex((line) => line.key === key) === at)),
    comments: [...first.comments, ...second.comments],
    bars: [...first.bars, ...second.bars],
  };
}

function union(first: readonly BarListLine[], second: readonly BarListLine[]): BarListLine[] {
  const own = first.map((line) => {
    const other = second.find(({ key }) => key === line.key);
    return {
      ...line,
      ruled: line.ruled || other?.ruled === true,
      tail: [line.tail.trimEnd(), other?.tail ?? ''].filter(Boolean).join(' '),
    };
  });
  return [...own, ...second.filter(({ key }) => !first.some((line) => line.key === key))];
}

/** Heads of one length, so that columns stand under each other. */
function evenHeads(lines: readonly BarListLine[]): BarListLine[] {
  const longest = Math.max(0, ...lines.map(({ head }) => head.length));
  return lines.map((line) => ({ ...line, head: line.head.padEnd(longest) }));
}
