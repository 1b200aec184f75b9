import { GUITAR } from '../instrument/instruments';
import type { FieldName } from './fieldNames';
import { FIELD_READERS } from './fieldReaders';
import { usualTuning } from './headerViews';

/** Whether a field could take a value, on a guitar and without the user's own tunings. */
export function fieldTakes(field: FieldName, value: string): boolean {
  const tuning = usualTuning(GUITAR);
  return FIELD_READERS[field](value, { instrument: GUITAR, tuning, frets: GUITAR.frets, userTunings: {} }).ok;
}
