import { widthOfText } from '../../notation/columns';
import type { System, TabDocument } from '../../notation/tabDocument';
import type { Slice } from '../change/slices';
import type { ServiceError } from '../serviceApi';
import { timesRemark } from './arrangeBars';
import { dealt, printBars, type Bar, type BarList } from './barList';
import { notesIn, NO_SYSTEM, type ColumnsDone } from './columns';
import type { ColumnsRequest } from './columnsRequest';
import { placeOf, spotAt } from './cursorSpot';
import { joinLists, linesOf, whatStandsBetween } from './joinSystems';
import { relay } from './relay';

const USUAL_WIDTH = 80;
const LEAST_WIDTH = 20;

/**
 * Breaks systems anew so that no line is longer than a width, in columns, as far as one bar fits. A cursor means the whole
 * section; systems that something stands between, or under other fields, are broken apart from each other.
 */
export function fitWidth(
  document: TabDocument,
  slices: readonly Slice[],
  { range, width = USUAL_WIDTH }: Pick<ColumnsRequest, 'range' | 'width'>,
): ColumnsDone | ServiceError {
  if (!(width >= LEAST_WIDTH)) return { error: `A width of ${LEAST_WIDTH} columns or more was expected.` };
  const [first] = slices;
  if (!first) return NO_SYSTEM;
  const chosen =
    slices.length > 1
      ? slices.map(({ system }) => system)
      : document.systems.filter(
          ({ section, header }) =>
            section === first.system.section && header.part === first.system.header.part,
        );
  const from = chosen[0]?.firstLine ?? 0;
  const lines: string[] = [];
  let at = from;
  let counted = false;
  let goesOn = range.start;
  for (const group of groupsOf(document, chosen)) {
    const relaid = relay(group, (lists) => {
      const joined = joinLists(lists);
      return group.some(isPlayedAgain) ? [joined] : broken(joined, width);
    });
    if (typeof relaid === 'string') return { error: relaid };
    counted ||= relaid.counted;
    const place = linesOf(group);
    for (; at < place.from; at++) lines.push(document.line(at).text);
    const held = group.indexOf(first.system);
    if (held >= 0) {
      const spot = spotAt(first.system, range.start);
      const before = group.slice(0, held).reduce((sum, { reading }) => sum + reading.bars.length, 0);
      const own = { ...spot, bar: before + spot.bar };
      goesOn = placeOf(first.system, relaid.systems, from + lines.length, own);
    }
    lines.push(...relaid.systems.flatMap((system, i) => (i === 0 ? system : ['', ...system])));
    at = place.from + place.count;
  }
  return {
    from,
    count: at - from,
    lines,
    said: `The lines are at most ${width} columns long, where a bar fits.`,
    notesIn: notesIn(chosen),
    counted,
    goesOn,
  };
}

/** Systems that may be joined, in runs. What says how often it is played stays alone. */
function groupsOf(document: TabDocument, systems: readonly System[]): System[][] {
  const groups: System[][] = [];
  for (const system of systems) {
    const last = groups.at(-1);
    const before = last?.at(-1);
    const apart = !before || isPlayedAgain(before) || isPlayedAgain(system);
    if (last && before && !apart && whatStandsBetween(document, [before, system]) === undefined)
      last.push(system);
    else groups.push([system]);
  }
  return groups;
}

function isPlayedAgain(system: System): boolean {
  return timesRemark(system) !== undefined;
}

function broken(list: BarList, width: number): BarList[] {
  const systems: Bar[][] = [];
  const fits = (bars: readonly Bar[]): boolean =>
    printBars({
      ...list,
      comments: [],
      lines: list.lines.map((line) => ({ ...line, tail: '' })),
      bars,
    }).every((line) => widthOfText(line) <= width);
  for (const bar of list.bars) {
    const last = systems.at(-1);
    if (last && fits([...last, bar])) last.push(bar);
    else systems.push([bar]);
  }
  return dealt(list, systems);
}
