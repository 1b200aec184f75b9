import { emptyBar, type BarList } from './barList';

/** The cells of a line in all its bars, without bar signs. */
export function cellsOf({ bars }: BarList, key: string, kind: 'string' | 'row'): string {
  return bars.map(({ cells, width }) => cells.get(key) ?? fillOf(kind).repeat(width)).join('');
}

/** What an empty column of a line is written as. */
export function fillOf(kind: 'string' | 'row'): string {
  return kind === 'string' ? '-' : ' ';
}

/** Whether some cells hold nothing but dashes and spaces. */
export function isEmpty(cells: string): boolean {
  return /^[-–—─− ]*$/.test(cells);
}

/** Bars with other cells, given line by line without bar signs; the bar signs stay. */
export function recut(
  list: BarList,
  move: (cells: string, line: BarList['lines'][number]) => string,
): BarList {
  const cut = new Map<string, string[]>();
  for (const line of list.lines) {
    const now = move(cellsOf(list, line.key, line.kind), line);
    let at = 0;
    cut.set(
      line.key,
      list.bars.map(({ width }) => now.slice(at, (at += width))),
    );
  }
  const bars = list.bars.map((bar, i) => ({
    ...bar,
    cells: new Map([...cut].map(([key, cells]) => [key, cells[i] ?? ''])),
  }));
  return { ...list, bars };
}

/** Bars with an empty one put on, which takes over the sign at the end, so that a repeat takes it in. */
export function withBarPutOn(list: BarList): BarList {
  const last = list.bars.at(-1);
  if (!last) return list;
  const more = { ...emptyBar(last), close: last.close };
  return { ...list, bars: [...list.bars.slice(0, -1), { ...last, close: '|' }, more] };
}
