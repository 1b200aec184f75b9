import type { TabDocument } from '../notation/tabDocument';
import { lastWrittenLine } from './lines';
import type { FoldingRange } from './records';

/** What can be folded away: parts, sections, runs of fields and systems of two lines or more; nested, never crossing. */
export function folding(document: TabDocument): readonly FoldingRange[] {
  const marks = marksOf(document);
  const ranges: FoldingRange[] = [];
  const add = (startLine: number, lastLine: number): void => {
    const endLine = lastWrittenLine(document, startLine, lastLine);
    if (endLine > startLine) ranges.push({ startLine, endLine });
  };
  marks.forEach((mark, i) => {
    const next = marks.slice(i + 1).find((later) => later.level <= mark.level);
    add(mark.line, (next?.line ?? document.lineCount) - 1);
  });
  for (const { fields } of document.fieldGroups) {
    const [first] = fields;
    const last = fields.at(-1);
    // A `part` line begins a fold of its own.
    if (first && last && first.line.field !== 'part') add(first.lineIndex, last.lineIndex);
  }
  for (const { firstLine, lines } of document.systems) add(firstLine, firstLine + lines.length - 1);
  return ranges.sort((a, b) => a.startLine - b.startLine || b.endLine - a.endLine);
}

interface Mark {
  readonly line: number;
  /** 1 for a part that has sections of its own, 2 for a section, 3 for a part inside a section. */
  readonly level: 1 | 2 | 3;
}

/** Headings and `part` lines in order. */
function marksOf(document: TabDocument): readonly Mark[] {
  const parts = document.fieldGroups.flatMap(({ fields }) =>
    fields.filter(({ line }) => line.field === 'part').map(({ lineIndex }) => lineIndex),
  );
  const headings = document.sections.map(({ line }) => line);
  return [
    ...headings.map((line): Mark => ({ line, level: 2 })),
    ...parts.map((line): Mark => ({ line, level: ownsSections(document, line, headings) ? 1 : 3 })),
  ].sort((a, b) => a.line - b.line);
}

/** Whether a heading comes before any system below a `part` line, or there is none at all above it. */
function ownsSections(document: TabDocument, line: number, headings: readonly number[]): boolean {
  const above = headings.some((heading) => heading < line);
  const heading = headings.find((candidate) => candidate > line);
  const system = document.systems.find(({ firstLine }) => firstLine > line);
  if (!above) return true;
  return heading !== undefined && system !== undefined && heading < system.firstLine;
}
