import type { Range, System, TabDocument } from '../../notation/tabDocument';
import type { Passage } from '../serviceApi';
import { slicesIn, type Slice } from './slices';

/**
 * Passages that can be named at a selection, smallest first: the selection widened to bar signs, the section (and, of
 * several parts, this part's share of it), the part, the file. A range holds all that stands in it, so that a part's
 * share is offered only where no other part stands between.
 */
export function passages(document: TabDocument, selection: Range): readonly Passage[] {
  const { systems } = document;
  const selected = slicesIn(document, selection);
  const at =
    selected[0]?.system ??
    systems.find((system) => system.firstLine >= selection.start.line) ??
    systems.at(-1);
  if (!at) return [];
  const found: Passage[] = [];
  const add = (kind: Passage['kind'], title: string, some: readonly System[]): void => {
    if (some.length > 0 && isUnbroken(document, some))
      found.push({ kind, title, range: rangeOfSystems(some) });
  };
  if (selected.length > 0)
    found.push({ kind: 'selection', title: titleOf(document, selected), range: rangeOf(selected) });
  const { section } = at;
  const { part } = at.header;
  const severalParts = document.parts.length > 1;
  const ofPart = (system: System): boolean => system.header.part === part;
  if (section) {
    const inSection = systems.filter((system) => system.section === section);
    const own = inSection.filter(ofPart);
    if (severalParts && part !== undefined && own.length < inSection.length)
      add('section', `${section.name}, ${part}`, own);
    add('section', section.name, inSection);
  }
  if (severalParts)
    add('part', part === undefined ? 'Before the first part' : `Part ${part}`, systems.filter(ofPart));
  add('file', 'The whole file', systems);
  return found;
}

function isUnbroken(document: TabDocument, systems: readonly System[]): boolean {
  const [first] = systems;
  const start = first ? document.systems.indexOf(first) : -1;
  return systems.every((system, i) => document.systems[start + i] === system);
}

/** `Verse, bars 3–6`; of several parts, each with its bars: `Verse, low, bar 1; high, bars 1–2`. */
function titleOf(document: TabDocument, slices: readonly Slice[]): string {
  const sections = new Set(slices.map(({ system }) => system.section?.name));
  const [section] = sections;
  const parts = new Map<string | undefined, { from: number; to: number }>();
  for (const { system, firstBar, lastBar } of slices) {
    const { part } = system.header;
    const first = document.placeOf(system).firstBar;
    const from = parts.get(part)?.from ?? first + firstBar;
    parts.set(part, { from, to: first + lastBar });
  }
  const bars = [...parts].map(([part, { from, to }]) => {
    const numbers = from === to ? `bar ${from}` : `bars ${from}–${to}`;
    return document.parts.length > 1 && part !== undefined ? `${part}, ${numbers}` : numbers;
  });
  const title = (sections.size === 1 && section !== undefined ? `${section}, ` : '') + bars.join('; ');
  return title.charAt(0).toUpperCase() + title.slice(1);
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

export function rangeOfSystems(systems: readonly System[]): Range {
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
