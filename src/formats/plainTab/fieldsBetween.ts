import type { Capo } from '../../instrument/capo';
import type { Instrument } from '../../instrument/instrument';
import { GUITAR } from '../../instrument/instruments';
import type { Tuning } from '../../instrument/tuning';
import { formatTuning, sameTuning } from '../../instrument/tuningFormat';
import { usualTuning } from '../../notation/headerViews';
import { fieldLine } from '../../service/change/fieldText';

/** The fields that an import may have to state. */
export interface InForce {
  readonly instrument: Instrument;
  readonly tuning: Tuning;
  readonly capo: Capo | undefined;
}

/** What holds where nothing is written. */
export const NOTHING_STATED: InForce = { instrument: GUITAR, tuning: usualTuning(GUITAR), capo: undefined };

/**
 * The lines of fields that lead from what is in force to what is wanted; none where it is the same.
 * @param capo fret of a full capo, 0 for none
 */
export function fieldsBetween(
  now: InForce,
  wanted: { readonly instrument: Instrument; readonly tuning: Tuning; readonly capo: number },
): string[] {
  const other = now.instrument !== wanted.instrument;
  // A new instrument brings its own tuning, and no capo.
  const tuning = other ? usualTuning(wanted.instrument) : now.tuning;
  const fret = other ? 0 : now.capo?.strings ? -1 : (now.capo?.fret ?? 0);
  const fields: [string, string][] = [];
  if (other) fields.push(['instrument', wanted.instrument.name]);
  if (!sameTuning(tuning, wanted.tuning))
    fields.push(['tuning', formatTuning(wanted.tuning, wanted.instrument)]);
  if (fret !== wanted.capo) fields.push(['capo', wanted.capo === 0 ? 'none' : String(wanted.capo)]);
  const column = Math.max(0, ...fields.map(([name]) => name.length + 2));
  return fields.map(([name, value]) => fieldLine(name, value, column));
}
