import { checkDocument } from '../checks/checkDocument';
import type { TabDocument } from '../notation/tabDocument';
import type { Diagnostic, Settings } from './records';

/**
 * Every diagnostic of the document in the order of the text, each with the severity that the user has set. The same
 * list comes back as long as nothing has changed.
 */
export function diagnostics(document: TabDocument, settings: Settings): readonly Diagnostic[] {
  return checkDocument(document, settings);
}
