import type { Range, System, TabDocument } from '../../notation/tabDocument';
import type { Passage } from '../serviceApi';
import { slicesIn, type Slice } from './slices';

/** Passages that can be named at a selection, smallest first: the selection widened to bar signs, the section, the part, the file. */
export function passages(document: TabDocument, selection: Range): readonly Passage[] {
  const found: Passage[] = [];
  const selected = slicesIn(document, selection);
  const at =
    selected[0]?.system ??
    document.systems.find((system) => system.firstLine >= selection.start.line) ??
    document.systems.at(-1);
  if (selected.length > 0)
    found.push({ kind: 'selection', title: barsTitle(document, selected), range: rangeOf(selected) });
  const { section } = at ?? {};
  if (at && section) {
    const systems = document.systems.filter(
      (system) => system.section === section && system.header.part === at.header.part,
    );
    found.push({ kind: 'section', title: section.name, range: rangeOfSystems(systems) });
  }
  if (at && document.parts.length > 1) {
    const systems = document.systems.filter((system) => system.header.part === at.header.part);
    // A part whose systems stand between another's is no one stretch of text.
    if (isUnbroken(document, systems))
      found.push({
        kind: 'part',
        title: `Part ${at.header.part ?? ''}`.trim(),
        range: rangeOfSystems(systems),
      });
  }
  if (document.systems.length > 0)
    found.push({ kind: 'file', title: 'The whole file', range: rangeOfSystems(document.systems) });
  return found;
}

function isUnbroken(document: TabDocument, systems: readonly System[]): boolean {
  const [first] = systems;
  const start = first ? document.systems.indexOf(first) : -1;
  return systems.every((system, i) => document.systems[start + i] === system);
}

function barsTitle(document: TabDocument, slices: readonly Slice[]): string {
  const [first] = slices;
  const last = slices.at(-1);
  if (!first || !last) return '';
  const from = document.placeOf(first.system).firstBar + first.firstBar;
  const to = document.placeOf(last.system).firstBar + last.lastBar;
  return from === to ? `Bar ${from}` : `Bars ${from}–${to}`;
}

/** From the first bar's first column to the last bar's end, on the first and last string lines. */
function rangeOf(slices: readonly Slice[]): Range {
  const [first] = slices;
  const last = slices.at(-1);
  if (!first || !last) return { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  return { start: placeIn(first, 'start'), end: placeIn(last, 'end') };
}

function placeIn({ system, firstBar, lastBar }: Slice, side: 'start' | 'end'): Range['start'] {
  const { bars } = system.reading;
  const whole = side === 'start' ? firstBar === 0 : lastBar === bars.length - 1;
  const at =
    side === 'start'
      ? system.lines.findIndex((line) => line.kind === 'string')
      : system.lines.findLastIndex((line) => line.kind === 'string');
  const line = system.lines[at];
  if (whole || line?.kind !== 'string') return side === 'start' ? startOf(system) : endOf(system);
  const column = side === 'start' ? bars[firstBar]?.startColumn : bars[lastBar]?.endColumn;
  return {
    line: system.firstLine + at,
    character: Math.min(line.text.length, line.bodyStart + (column ?? 0)),
  };
}

function rangeOfSystems(systems: readonly System[]): Range {
  const [first] = systems;
  const last = systems.at(-1);
  return first && last
    ? { start: startOf(first), end: endOf(last) }
    : { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
}

function startOf(system: System): Range['start'] {
  return { line: system.firstLine, character: 0 };
}

function endOf(system: System): Range['end'] {
  return {
    line: system.firstLine + system.lines.length - 1,
    character: system.lines.at(-1)?.text.length ?? 0,
  };
}
