import type { TabDocument } from '../notation/tabDocument';
import type { Diagnostic, Settings } from './records';

/** Every diagnostic of the document in the order of the text. */
export function diagnostics(_document: TabDocument, _settings: Settings): readonly Diagnostic[] {
  return [];
}
