import { writeCountAction } from '../../checks/writeCountAction';
import { lastFirst } from '../../checks/support/edits';
import type { Range, System, TabDocument, TextEdit } from '../../notation/tabDocument';
import type { WideRewrite, WideRewriteId } from './wideRewrite';

/**
 * The rhythm that was worked out, written over every system of the section that a selection begins in, or of the whole
 * file. The offers are told without working the counts out, which takes a while for a long file.
 * @returns none where it would be one system only
 */
export function countOffers(document: TabDocument, range: Range): readonly WideRewrite[] {
  const all = systemsOf(document, range, 'counts-of-file');
  const own = systemsOf(document, range, 'counts-of-section');
  const name = document.systemAt(range.start.line)?.section?.name;
  const offers: WideRewrite[] = [];
  // Twice the same would be no choice.
  if (own.length > 1 && own.length < all.length)
    offers.push({
      id: 'counts-of-section',
      title: `Write the counts of ${name === undefined || name === '' ? 'this section' : name} that were worked out (${own.length} systems)`,
    });
  if (all.length > 1)
    offers.push({
      id: 'counts-of-file',
      title: `Write the counts of the file that were worked out (${all.length} systems)`,
    });
  return offers;
}

/** The edits of such an offer; a system whose times no count can say stays as it is. */
export function writeCounts(document: TabDocument, range: Range, which: WideRewriteId): readonly TextEdit[] {
  return lastFirst(
    systemsOf(document, range, which).flatMap((system) => writeCountAction(system)?.edits ?? []),
  );
}

/** The systems without a count, and with notes, that an offer speaks of. */
function systemsOf(document: TabDocument, { start }: Range, which: WideRewriteId): readonly System[] {
  const here = document.systemAt(start.line);
  if (!here) return [];
  const missing = document.systems.filter(mayBeCounted);
  if (which === 'counts-of-file') return missing;
  const { section, header } = here;
  return missing.filter(
    (other) => section && other.section?.line === section.line && other.header.part === header.part,
  );
}

function mayBeCounted({ reading: { timing, notes, rows } }: System): boolean {
  return timing === 'inferred' && notes.length > 0 && !rows.some(({ row }) => row === 'count');
}
