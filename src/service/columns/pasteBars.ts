import { compare } from '../../music/fraction';
import type { System, TabDocument } from '../../notation/tabDocument';
import type { Slice } from '../change/slices';
import type { ServiceError } from '../serviceApi';
import { systemOf } from '../typing/putFrets';
import { lostNotes } from './arrangeBars';
import type { ColumnsDone } from './columns';
import type { ColumnsRequest } from './columnsRequest';
import { placeOf, spotAt } from './cursorSpot';
import { mergeLists } from './mergeLists';
import { relay } from './relay';
import { inPlaceOf } from './repeatSigns';

/** Puts copied bars before the bar at the cursor, or over it and those that follow in its system. */
export function pasteBars(
  document: TabDocument,
  slice: Slice,
  { action, range, text = '' }: ColumnsRequest,
): ColumnsDone | ServiceError {
  const { system, firstBar } = slice;
  const pasted = readBars(system, text);
  if (typeof pasted === 'string') return { error: pasted };
  const count = pasted.reading.bars.length;
  const over = action === 'pasteOver';
  const lastBar = Math.min(system.reading.bars.length, firstBar + count) - 1;
  const relaid = relay([system, pasted], ([here, there]) => {
    if (!here || !there) return [];
    const merged = mergeLists({ ...here, lines: here.lines.map((line) => ({ ...line, tail: '' })) }, there);
    const own = merged.bars.slice(0, here.bars.length);
    const fresh = merged.bars.slice(here.bars.length);
    const lines = merged.lines.map((line) => ({
      ...line,
      tail: here.lines.find(({ key }) => key === line.key)?.tail ?? '',
    }));
    const gone = over ? own.slice(firstBar, lastBar + 1) : [];
    const bars = inPlaceOf(gone, own.slice(0, firstBar), fresh, own.slice(firstBar + gone.length));
    return [{ lines, comments: here.comments, bars }];
  });
  if (typeof relaid === 'string') return { error: relaid };
  const number = document.placeOf(system).firstBar + firstBar;
  const bars = count === 1 ? 'One bar is' : `${count} bars are`;
  return {
    from: system.firstLine,
    count: system.lines.length,
    lines: relaid.systems.flat(),
    said: over ? `${bars} pasted over from bar ${number} on.` : `${bars} pasted before bar ${number}.`,
    notesIn: system.reading.notes.length,
    unplaced: over ? lostNotes(document, { ...slice, lastBar }, 'other bars were pasted over it') : [],
    counted: relaid.counted,
    goesOn: placeOf(system, relaid.systems, system.firstLine, {
      key: spotAt(system, range.start).key,
      bar: firstBar,
      offset: 0,
    }),
  };
}

/** What is pasted, read as a system under the fields that hold where it goes. */
function readBars(system: System, text: string): System | string {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '');
  const read = systemOf({ ...system, firstInPart: false, firstInSection: false }, lines);
  const isTab = read.lines.every(({ kind }) => kind === 'string' || kind === 'row' || kind === 'comment');
  if (lines.length === 0 || !isTab || read.reading.bars.length === 0)
    return 'The clipboard holds no bars: copy them with Copy Bars first, or use Paste as Tab for other text.';
  const most = system.header.tuning.strings.length;
  if (read.reading.strings.some(({ number }) => number > most || number < 1))
    return `What was copied has more strings than the ${most} here.`;
  const whole = system.reading.bars.find(({ pickup }) => !pickup)?.length;
  const odd = read.reading.bars.some(
    ({ length, pickup }) => !pickup && whole && compare(length, whole) !== 0,
  );
  return odd ? 'The bars that were copied have another meter than those here.' : read;
}
