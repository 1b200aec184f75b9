import type { Range, TabDocument } from '../../notation/tabDocument';
import { slicesIn } from '../change/slices';
import type { ServiceError } from '../serviceApi';
import { barListOf, printBars, type BarList } from './barList';
import { NO_SYSTEM } from './columns';
import { joinLists } from './joinSystems';
import { tornMark } from './tornMark';

/** The bars that a range touches, of all strings and rows, as the text of one system with its labels. */
export function copyBars(document: TabDocument, range: Range): { readonly text: string } | ServiceError {
  const lists: BarList[] = [];
  for (const { system, firstBar, lastBar } of slicesIn(document, range)) {
    const list = barListOf(system);
    if (typeof list === 'string') return { error: list };
    const lines = list.lines.map((line) => ({ ...line, tail: '' }));
    lists.push({ lines, comments: [], bars: list.bars.slice(firstBar, lastBar + 1) });
  }
  if (lists.length === 0) return NO_SYSTEM;
  const joined = joinLists(lists);
  const torn = tornMark(joined);
  if (torn !== undefined) return { error: torn };
  return {
    text: printBars(joined)
      .map((line) => `${line}\n`)
      .join(''),
  };
}
