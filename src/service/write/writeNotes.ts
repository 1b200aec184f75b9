import type { Place, TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult } from '../serviceApi';
import type { WriteNotesRequest } from './writeRequest';

/** Writes notes by their names. */
export function writeNotes(
  _document: TabDocument,
  _place: Place,
  _request: WriteNotesRequest,
  _settings: Settings,
): ChangeResult {
  return { error: 'Writing by names is on its way; update Pegbox and try again.' };
}
