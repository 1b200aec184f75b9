import type { System, TabDocument } from '../../notation/tabDocument';
import type { Finding, Mend, SystemFinding, SystemMend } from '../check';
import { lastFirst, rangeOf, replace } from './edits';

/** A finding of a system, and what it offers, where the system stands in its document. */
export function placeFinding(finding: SystemFinding, document: TabDocument, system: System): Finding {
  const { firstLine } = system;
  return {
    range: rangeOf(firstLine + finding.line, finding.start, finding.end),
    message: finding.message,
    mends: (finding.mends ?? []).flatMap((mend) => placeMend(mend, document, system)),
  };
}

function placeMend(mend: SystemMend, document: TabDocument, system: System): Mend[] {
  const { firstLine } = system;
  const edits =
    typeof mend.edits === 'function'
      ? mend.edits(document, system)
      : mend.edits.map(({ line, start, end, text }) => replace(firstLine + line, start, end, text));
  if (!edits || edits.length === 0) return [];
  const { title, preferred = false, harmless = false } = mend;
  return [{ title, edits: lastFirst(edits), preferred, ...(harmless && { harmless }) }];
}
