import { formatTuning } from '../instrument/tuningFormat';
import type { Section, System, TabDocument } from '../notation/tabDocument';
import { lastWrittenLine, linesRange, wholeLine } from './lines';
import type { OutlineItem, Range } from './records';

/**
 * Part › section › system. A document without parts begins with its sections, and what stands before the first
 * heading is not wrapped. A part's range runs from its first line to its last, whatever stands between.
 */
export function outline(document: TabDocument): readonly OutlineItem[] {
  if (document.parts.every((part) => part === undefined)) return sectionsOf(document, document.systems, true);
  return document.parts.flatMap((part): readonly OutlineItem[] => {
    const systems = document.systems.filter((system) => system.header.part === part);
    const children = sectionsOf(document, systems, false);
    return part === undefined ? children : [partItem(document, part, systems, children)].flat();
  });
}

function partItem(
  document: TabDocument,
  part: string,
  systems: readonly System[],
  children: readonly OutlineItem[],
): readonly OutlineItem[] {
  const [first] = systems;
  const line = partLine(document, part) ?? first?.firstLine;
  if (line === undefined) return [];
  const selection = wholeLine(document, line);
  return [
    {
      name: part === '' ? 'Part without a name' : part,
      detail: first ? formatTuning(first.header.tuning, first.header.instrument) : '',
      kind: 'part',
      range: hull([selection, ...children.map((child) => child.range)]),
      selection,
      children,
    },
  ];
}

/** The line of `part:` that begins a part. */
function partLine(document: TabDocument, part: string): number | undefined {
  for (const { fields } of document.fieldGroups) {
    const field = fields.find(({ line }) => line.field === 'part' && line.value === part);
    if (field) return field.lineIndex;
  }
  return undefined;
}

/**
 * The systems under their headings.
 * @param whole whether the headings belong to these systems alone: then a section begins at its heading
 */
function sectionsOf(
  document: TabDocument,
  systems: readonly System[],
  whole: boolean,
): readonly OutlineItem[] {
  const bySection = new Map<Section | undefined, System[]>([[undefined, []]]);
  if (whole) for (const section of document.sections) bySection.set(section, []);
  for (const system of systems) {
    const list = bySection.get(system.section);
    if (list) list.push(system);
    else bySection.set(system.section, [system]);
  }
  return [...bySection].flatMap(([section, own]): readonly OutlineItem[] => {
    const children = own.map((system) => systemItem(document, system));
    return section ? [sectionItem(document, section, own, children, whole)] : children;
  });
}

function sectionItem(
  document: TabDocument,
  section: Section,
  systems: readonly System[],
  children: readonly OutlineItem[],
  whole: boolean,
): OutlineItem {
  const [first] = systems;
  const start = whole || !first ? section.line : first.firstLine;
  const selection = wholeLine(document, start);
  const range = whole ? sectionRange(document, section) : selection;
  return {
    name: section.name === '' ? 'Section without a name' : section.name,
    detail: section.times === undefined ? '' : `x${section.times}`,
    kind: 'section',
    range: hull([range, ...children.map((child) => child.range)]),
    selection,
    children,
  };
}

/** From a heading to the last written line before the next one. */
function sectionRange(document: TabDocument, section: Section): Range {
  const at = document.sections.indexOf(section);
  const next = document.sections[at + 1]?.line ?? document.lineCount;
  return linesRange(document, section.line, lastWrittenLine(document, section.line, next - 1));
}

function systemItem(document: TabDocument, system: System): OutlineItem {
  const last = system.firstLine + system.lines.length - 1;
  return {
    name: barsName(document.placeOf(system).firstBar, system.reading.bars.length),
    detail: '',
    kind: 'system',
    range: linesRange(document, system.firstLine, last),
    selection: wholeLine(document, system.firstLine),
    children: [],
  };
}

/**
 * @example barsName(1, 4) // 'Bars 1–4'
 */
export function barsName(first: number, count: number): string {
  return count > 1 ? `Bars ${first}–${first + count - 1}` : `Bar ${first}`;
}

/** The least range that holds all. */
function hull(ranges: readonly [Range, ...Range[]]): Range {
  return ranges.reduce((all, { start, end }) => ({
    start: isBefore(start, all.start) ? start : all.start,
    end: isBefore(all.end, end) ? end : all.end,
  }));
}

function isBefore(a: Range['start'], b: Range['start']): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}
