import { formatNoteName } from '../../music/noteName';
import type { TabDocument } from '../../notation/tabDocument';
import { noteAt, rangeIn } from '../locate';
import type { Hover, Place, Settings } from '../records';

/** What stands under a character, in words. */
export function hover(document: TabDocument, place: Place, _settings: Settings): Hover | undefined {
  const found = noteAt(document, place);
  if (!found) return undefined;
  const names = found.note.pitches.map(({ name }) => formatNoteName(name)).join(' and ');
  return { markdown: `**${names || 'x'}**`, range: rangeIn(found.system, found.note) };
}
