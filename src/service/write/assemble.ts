import type { System, TabDocument, TextEdit } from '../../notation/tabDocument';
import { editTo } from '../change/edits';

/** Lines that are put in as paragraphs of their own before a line of a document. */
export interface Insertion {
  /** Index of the line before which they go; the number of lines for the end. */
  readonly at: number;
  readonly paragraphs: readonly (readonly string[])[];
}

/**
 * Where new bars go for a cursor outside of systems: on a blank line there; elsewhere behind the text, fields or heading
 * that the line belongs to. Fields that are read together are not divided: what is written under some of them would be
 * read without the others, and so would they.
 */
export function insertionLine(document: TabDocument, line: number): number {
  const at = behindParagraph(document, line);
  const divided = document.fieldGroups.find(
    ({ fields }) => (fields[0]?.lineIndex ?? at) < at && (fields.at(-1)?.lineIndex ?? -1) >= at,
  );
  const last = divided?.fields.at(-1);
  return last ? insertionLine(document, last.lineIndex) : at;
}

function behindParagraph(document: TabDocument, line: number): number {
  const isBlank = (at: number): boolean => document.line(at).kind === 'blank';
  const last = document.lineCount - 1;
  if (isBlank(line)) return line > 0 && line < last && !isBlank(line - 1) ? line + 1 : line;
  let at = line;
  while (at < last && !isBlank(at + 1) && !document.systemAt(at + 1)) at += 1;
  return at + 1;
}

/** A document's new lines. */
export interface Assembled {
  readonly edits: readonly TextEdit[];
  /** The line on which a paragraph begins. */
  readonly lineOf: (paragraph: readonly string[]) => number;
}

/**
 * One edit that gives systems new lines, in paragraphs, and puts further paragraphs in. A blank line is kept between
 * paragraphs and what stands about them.
 */
export function assembled(
  document: TabDocument,
  replaced: ReadonlyMap<System, readonly (readonly string[])[]>,
  insertion: Insertion | undefined,
): Assembled {
  const begins = new Map<readonly string[], number>();
  const starts = new Map(
    [...replaced].map(([system, paragraphs]) => [system.firstLine, { system, paragraphs }]),
  );
  const lines: string[] = [];
  const put = (paragraphs: readonly (readonly string[])[]): void => {
    paragraphs.forEach((paragraph, i) => {
      if (i > 0) lines.push('');
      begins.set(paragraph, lines.length);
      lines.push(...paragraph);
    });
  };
  const insert = (at: number): void => {
    if (insertion?.at !== at) return;
    if (lines.length > 0 && lines.at(-1)?.trim() !== '') lines.push('');
    put(insertion.paragraphs);
    if (at < document.lineCount && document.line(at).kind !== 'blank') lines.push('');
  };
  for (let i = 0; i < document.lineCount; i++) {
    insert(i);
    const replacement = starts.get(i);
    if (!replacement) {
      lines.push(document.line(i).text);
      continue;
    }
    put(replacement.paragraphs);
    i += replacement.system.lines.length - 1;
  }
  insert(document.lineCount);
  return { edits: editTo(document, lines), lineOf: (paragraph) => begins.get(paragraph) ?? 0 };
}
