import type { Diagnostic, Severity } from '../service/records';

/**
 * How many diagnostics of a document are shown. An engineering value: editors and their lists stay quick, and nobody
 * works through more before mending some.
 */
export const MOST_DIAGNOSTICS = 200;

const RANKS: Readonly<Record<Severity, number>> = { error: 0, warning: 1, information: 2, hint: 3 };

/**
 * At most `most` diagnostics in the order of the text. Where there are more, the gravest stay, and the last item says
 * how many are not shown, at the first place of these.
 *
 * @example cutDiagnostics(found, 200).length // never above 200
 */
export function cutDiagnostics(
  found: readonly Diagnostic[],
  most: number = MOST_DIAGNOSTICS,
): readonly Diagnostic[] {
  if (found.length <= most) return found;
  const gravest = found
    .map((diagnostic, index) => ({ diagnostic, index }))
    .sort((a, b) => RANKS[a.diagnostic.severity] - RANKS[b.diagnostic.severity] || a.index - b.index)
    .slice(0, most - 1)
    .map(({ index }) => index);
  const shown = new Set(gravest);
  const hidden = found.filter((_, index) => !shown.has(index));
  const kept = found.filter((_, index) => shown.has(index));
  const [first] = hidden;
  return first === undefined ? kept : [...kept, moreItem(first, hidden)];
}

/** The code of the item that stands for those not shown. */
export const MORE_CODE = 'more';

function moreItem(first: Diagnostic, hidden: readonly Diagnostic[]): Diagnostic {
  const errors = hidden.filter((diagnostic) => diagnostic.severity === 'error').length;
  const among = errors === 0 ? '' : `, ${errors} of them errors`;
  return {
    range: first.range,
    severity: errors === 0 ? 'information' : 'error',
    code: MORE_CODE,
    message: `${hidden.length} more${among}: they are shown when some of the others are mended.`,
    mends: [],
  };
}
