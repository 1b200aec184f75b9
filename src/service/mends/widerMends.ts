import type { TabDocument } from '../../notation/tabDocument';
import type { Diagnostic, Mend } from '../records';
import { relabelEverywhere } from './relabelEverywhere';

/** Diagnostics of labels that go on saying what an earlier tuning was. */
const LABELS: ReadonlySet<string> = new Set(['usual-labels', 'label-disagrees']);

/**
 * Mends of a diagnostic that reach beyond its system. They are worked out when they are asked for: they would be out of
 * date as soon as another system changes, and diagnostics are remembered system by system.
 */
export function widerMends(document: TabDocument, { code, range }: Diagnostic): readonly Mend[] {
  if (!LABELS.has(code)) return [];
  return relabelEverywhere(document, range.start.line);
}
