import type { Range, TabDocument } from '../../notation/tabDocument';
import { slicesIn } from '../change/slices';
import type { ServiceError } from '../serviceApi';
import { NO_SYSTEM } from './columns';
import { joinLists } from './joinSystems';
import { relay } from './relay';

/**
 * The bars that a range touches, of all strings and rows, as the text of one system with its labels. Apart from their
 * system they have to say the same: where the columns alone would not, the count is written.
 */
export function copyBars(document: TabDocument, range: Range): { readonly text: string } | ServiceError {
  const slices = slicesIn(document, range, { repeated: false });
  if (slices.length === 0) return NO_SYSTEM;
  const relaid = relay(
    slices.map(({ system }) => system),
    (lists) => [
      joinLists(
        lists.map(({ lines, bars }, i) => ({
          lines: lines.map((line) => ({ ...line, tail: '' })),
          comments: [],
          bars: bars.slice(slices[i]?.firstBar, (slices[i]?.lastBar ?? 0) + 1),
        })),
      ),
    ],
  );
  if (typeof relaid === 'string') return { error: relaid };
  return { text: relaid.systems.flatMap((lines) => lines.map((line) => `${line}\n`)).join('') };
}
