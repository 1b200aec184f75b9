import { formatNoteName } from '../../music/noteName';
import type { System, TabDocument } from '../../notation/tabDocument';
import { notesOf, type Slice } from '../change/slices';
import type { ServiceError, UnplacedNote } from '../serviceApi';
import { dealt, emptyBar, type BarList } from './barList';
import type { ColumnsDone } from './columns';
import type { ColumnsRequest } from './columnsRequest';
import { placeOf, spotAt } from './cursorSpot';
import { relay } from './relay';
import { inPlaceOf, withoutLoose } from './repeatSigns';

/** Puts in, takes out or doubles bars of a system, or splits it before a bar. */
export function arrangeBars(
  document: TabDocument,
  slice: Slice,
  { action, range, withNotes = false }: ColumnsRequest,
): ColumnsDone | ServiceError {
  const { system, firstBar, lastBar } = slice;
  const many = lastBar > firstBar;
  const number = document.placeOf(system).firstBar;
  const named = many ? `Bars ${number + firstBar}–${number + lastBar}` : `Bar ${number + firstBar}`;
  const gone = action === 'removeBars' ? lostNotes(document, slice, 'its bar was taken out') : [];
  if (gone.length > 0 && !withNotes)
    return {
      error: `${named} ${many ? 'have' : 'has'} ${gone.length === 1 ? 'a note' : `${gone.length} notes`}: clear ${many ? 'them' : 'it'} first, or take the notes out as well.`,
    };
  if (action === 'removeBars' && lastBar - firstBar + 1 === system.reading.bars.length)
    return { error: 'These are all bars of the system: delete its lines instead.' };
  if (action === 'splitSystem' && firstBar === 0)
    return { error: 'The system begins with this bar already: place the cursor in a later one.' };
  const remark = timesRemark(system);
  if (action === 'splitSystem' && remark !== undefined)
    return {
      error: `“${remark}” says how often these bars are played, so they stay together: write its repeat signs first.`,
    };
  const relaid = relay([system], ([list]) => (list ? arranged(list, slice, action) : []));
  if (typeof relaid === 'string') return { error: relaid };
  const said = {
    insertBar: `An empty bar is put in before bar ${number + firstBar}.`,
    removeBars: `${named} ${many ? 'are' : 'is'} taken out.`,
    duplicateBars: `${named} ${many ? 'stand' : 'stands'} there twice.`,
    splitSystem: `The system is split before bar ${number + firstBar}.`,
  };
  return {
    from: system.firstLine,
    count: system.lines.length,
    lines: relaid.systems.flatMap((lines, i) => (i === 0 ? lines : ['', ...lines])),
    said: said[action as keyof typeof said],
    notesIn: system.reading.notes.length,
    unplaced: gone,
    counted: relaid.counted,
    goesOn: placeOf(system, relaid.systems, system.firstLine, {
      key: spotAt(system, range.start).key,
      // The copy, the empty bar, or what has come in place of the bars that went.
      bar: action === 'duplicateBars' ? lastBar + 1 : firstBar,
      offset: 0,
    }),
  };
}

function arranged(list: BarList, { firstBar, lastBar }: Slice, action: ColumnsRequest['action']): BarList[] {
  const { bars } = list;
  const before = bars.slice(0, firstBar);
  const own = bars.slice(firstBar, lastBar + 1);
  const after = bars.slice(lastBar + 1);
  const [first] = own;
  if (action === 'insertBar' && first)
    return [{ ...list, bars: [...before, emptyBar(first), ...own, ...after] }];
  if (action === 'removeBars') return [{ ...list, bars: inPlaceOf(own, before, [], after) }];
  if (action === 'duplicateBars') {
    // A repeat that begins or ends outside takes both copies in.
    const copies = [...withoutLoose(own, 'close'), ...withoutLoose(own, 'open')];
    return [{ ...list, bars: [...before, ...copies, ...after] }];
  }
  return dealt(list, [before, [...own, ...after]]);
}

/** The remark of a system that says how often it is played. */
export function timesRemark({ lines }: System): string | undefined {
  for (const line of lines)
    if (line.kind === 'string' && line.remark?.times !== undefined)
      return line.text.slice(line.bodyEnd).trim();
  return undefined;
}

/** The notes of some bars that are no longer there, as a report lists them. */
export function lostNotes(document: TabDocument, slice: Slice, reason: string): UnplacedNote[] {
  const { part, firstBar } = document.placeOf(slice.system);
  return notesOf(slice).map(({ note }) => ({
    ...(part !== undefined && { part }),
    bar: firstBar + note.bar,
    name: note.pitches.map(({ name }) => formatNoteName(name)).join('/') || 'x',
    reason,
  }));
}
