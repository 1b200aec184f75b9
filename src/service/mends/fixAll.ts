import { sameSound } from '../../notation/sameReading';
import type { TabDocument } from '../../notation/tabDocument';
import { diagnostics } from '../diagnostics';
import { open } from '../open';
import type { Mend, Range, Settings, TextEdit } from '../records';
import { lineEdits } from '../format/lineEdits';

/** A mend may make room for another one; more rounds than this have not been seen to be of use. */
const MOST_ROUNDS = 4;

/**
 * The edits of all mends that are surely meant and harmless: those after which every note sounds as before, at the time it
 * had. Mends that get in each other's way are taken one after the other; what would change a sound in their company
 * is left out.
 * @returns edits of single lines in the order of the text
 */
export function fixAll(document: TabDocument, settings: Settings): readonly TextEdit[] {
  let current = open(document.text(), settings);
  const refused = new Set<string>();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const mends = diagnostics(current, settings)
      .flatMap((found) => found.mends.filter(({ preferred, harmless }) => preferred && harmless).slice(0, 1))
      .filter((mend) => !refused.has(keyOf(mend)));
    if (mends.length === 0) break;
    const together = apart(mends);
    const next = after(current, together, settings);
    if (soundsTheSame(current, next)) {
      current = next;
      continue;
    }
    for (const mend of together) {
      const alone = after(current, [mend], settings);
      if (soundsTheSame(current, alone)) {
        current = alone;
        break;
      }
      refused.add(keyOf(mend));
    }
  }
  return editsBetween(document, current);
}

/** Those of some mends whose edits do not meet, the first ones first. */
function apart(mends: readonly Mend[]): Mend[] {
  const taken: Range[] = [];
  return mends.filter(({ edits }) => {
    if (edits.some(({ range }) => taken.some((other) => meet(range, other)))) return false;
    taken.push(...edits.map(({ range }) => range));
    return true;
  });
}

function meet(one: Range, other: Range): boolean {
  return compare(one.start, other.end) <= 0 && compare(other.start, one.end) <= 0;
}

function compare(one: Range['start'], other: Range['start']): number {
  return one.line - other.line || one.character - other.character;
}

function after(document: TabDocument, mends: readonly Mend[], settings: Settings): ReturnType<typeof open> {
  const next = open(document.text(), settings);
  const edits = mends.flatMap((mend) => mend.edits);
  // Last place first, so that each edit finds its place.
  for (const edit of [...edits].sort((a, b) => compare(b.range.start, a.range.start))) next.edit([edit]);
  return next;
}

function soundsTheSame(one: TabDocument, other: TabDocument): boolean {
  return (
    one.systems.length === other.systems.length &&
    one.systems.every((system, i) => {
      const match = other.systems[i];
      return match !== undefined && sameSound(system.reading, match.reading);
    })
  );
}

/** What tells a mend again in the next round. */
function keyOf({ title, edits }: Mend): string {
  return `${title} ${edits.map(({ range, newText }) => `${range.start.line}:${range.start.character} ${newText}`).join()}`;
}

/** Both texts have as many lines: a harmless mend makes none and takes none away. */
function editsBetween(before: TabDocument, now: TabDocument): TextEdit[] {
  if (before.lineCount !== now.lineCount) return [];
  return Array.from({ length: before.lineCount }, (_, at) => {
    const line = before.line(at);
    const start = line.kind === 'string' || line.kind === 'row' ? line.bodyStart : 0;
    return lineEdits(at, line.text, start, now.line(at).text);
  }).flat();
}
