import { FIELD_NAMES } from '../../notation/fieldNames';
import type { TabDocument } from '../../notation/tabDocument';
import { lineRange } from '../locate';
import type { CompletionItem, Place, Settings } from '../records';

/** What can be written at a place. */
export function completion(
  document: TabDocument,
  place: Place,
  _settings: Settings,
): readonly CompletionItem[] {
  if (document.line(place.line).kind !== 'blank') return [];
  return FIELD_NAMES.map((name, i) => ({
    label: name,
    detail: '',
    documentation: '',
    edit: { range: lineRange(place.line, 0, place.character), newText: `${name}: ` },
    sortText: String(i).padStart(3, '0'),
    kind: 'field',
  }));
}
