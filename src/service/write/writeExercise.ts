import type { Place, TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult } from '../serviceApi';
import type { WriteExerciseRequest } from './writeRequest';

/** Writes a scale or an arpeggio as an exercise. */
export function writeExercise(
  _document: TabDocument,
  _place: Place,
  _request: WriteExerciseRequest,
  _settings: Settings,
): ChangeResult {
  return { error: 'Writing exercises is on its way; update Pegbox and try again.' };
}
