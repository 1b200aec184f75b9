import type { Range, System, TabDocument } from '../../notation/tabDocument';
import type { Slice } from '../change/slices';
import type { ServiceError } from '../serviceApi';
import type { BarList } from './barList';
import { notesIn, NO_SYSTEM, type ColumnsDone } from './columns';
import { timesRemark } from './arrangeBars';
import { placeOf, spotAt } from './cursorSpot';
import { mergeLists } from './mergeLists';
import { relay } from './relay';

/** Joins the systems selected, or the one at the cursor with the next. */
export function joinSystems(
  document: TabDocument,
  slices: readonly Slice[],
  { start }: Range,
): ColumnsDone | ServiceError {
  const [first] = slices;
  if (!first) return NO_SYSTEM;
  const last = slices.length > 1 ? slices.at(-1) : undefined;
  const systems = document.systems.slice(first.index, (last?.index ?? first.index + 1) + 1);
  if (systems.length < 2) return { error: 'No system follows that this one could be joined with.' };
  const remark = systems.map(timesRemark).find((text) => text !== undefined);
  if (remark !== undefined)
    return {
      error: `“${remark}” behind the bars says how often they are played, so they cannot be joined with others.`,
    };
  const apart = whatStandsBetween(document, systems);
  if (apart !== undefined) return { error: apart };
  const relaid = relay(systems, (lists) => [joinLists(lists)]);
  if (typeof relaid === 'string') return { error: relaid };
  const { from, count } = linesOf(systems);
  return {
    from,
    count,
    lines: relaid.systems.flat(),
    said: `${systems.length} systems are joined into one.`,
    notesIn: notesIn(systems),
    counted: relaid.counted,
    goesOn: placeOf(first.system, relaid.systems, from, spotAt(first.system, start)),
  };
}

/** All bars of some systems in one. */
export function joinLists([first, ...others]: readonly BarList[]): BarList {
  return others.reduce<BarList>(mergeLists, first ?? { lines: [], comments: [], bars: [] });
}

/** A sentence where something but blank lines stands between systems, or other fields hold. */
export function whatStandsBetween(document: TabDocument, systems: readonly System[]): string | undefined {
  for (const [i, system] of systems.entries()) {
    const before = systems[i - 1];
    if (!before) continue;
    if (before.header !== system.header || before.section !== system.section)
      return 'Between these systems a field or a heading says something else, so they stay apart.';
    for (let line = before.firstLine + before.lines.length; line < system.firstLine; line++)
      if (document.line(line).kind !== 'blank')
        return `Line ${line + 1} stands between these systems, so they stay apart: move it above them first.`;
  }
  return undefined;
}

/** The lines from the first system's first to the last one's last. */
export function linesOf(systems: readonly System[]): { from: number; count: number } {
  const [first] = systems;
  const last = systems.at(-1);
  if (!first || !last) return { from: 0, count: 0 };
  return { from: first.firstLine, count: last.firstLine + last.lines.length - first.firstLine };
}
