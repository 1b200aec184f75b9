import { isDash, isDigit } from '../typing/stringCell';
import { cellsOf, isEmpty, recut } from './barCells';
import type { BarList } from './barList';
import type { Chain } from './selectedNotes';

/** Some cells of one string that go elsewhere, counted through all bars without their signs. */
export interface Move {
  readonly chain: Chain;
  readonly key: string;
  readonly start: number;
  readonly end: number;
  /** Cells to the right. */
  readonly by: number;
}

/** Where something came to stand. */
export interface MovedSpan {
  readonly key: string;
  readonly bar: number;
  readonly offset: number;
  /** In cells, as far as the bar sign. */
  readonly length: number;
}

export interface MovedCells {
  readonly list: BarList;
  readonly spans: readonly MovedSpan[];
}

/** Moves cells all at once; what they leave is dashes. The first one that something is in the way of is told. */
export function movedCells(list: BarList, moves: readonly Move[]): MovedCells | { readonly blocked: Move } {
  const now = new Map<string, string>();
  for (const { key, kind } of list.lines) {
    const own = moves.filter((move) => move.key === key);
    if (own.length === 0) continue;
    const before = cellsOf(list, key, kind);
    const cells = [...before];
    for (const { start, end } of own) cells.fill('-', start, end);
    for (const move of own) {
      const { start, end, by } = move;
      const text = before.slice(start, end);
      const there = cells.slice(start + by, end + by);
      const isFree = [...text].every((sign, i) => isDash(sign) || isDash(there[i]));
      const touches =
        (isDigit(text[0]) && isDigit(cells[start + by - 1])) ||
        (isDigit(text.at(-1)) && isDigit(cells[end + by]));
      if (start + by < 0 || !isFree || touches) return { blocked: move };
      for (const [i, sign] of [...text].entries()) if (!isEmpty(sign)) cells[start + by + i] = sign;
    }
    now.set(key, cells.join(''));
  }
  return {
    list: recut(list, (cells, { key }) => now.get(key) ?? cells),
    spans: moves.map((move) => spanOf(list, move)),
  };
}

function spanOf({ bars }: BarList, { key, start, end, by }: Move): MovedSpan {
  let offset = start + by;
  let bar = 0;
  for (; bar < bars.length - 1 && offset >= (bars[bar]?.width ?? 0); bar++) offset -= bars[bar]?.width ?? 0;
  return { key, bar, offset, length: Math.min(end - start, (bars[bar]?.width ?? 0) - offset) };
}
