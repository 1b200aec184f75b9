import { formatCapo, type Capo } from '../../instrument/capo';
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

/** The lines of fields that lead from what is in force to what is wanted; none where it is the same. */
export function fieldsBetween(now: InForce, wanted: InForce): string[] {
  const other = now.instrument !== wanted.instrument;
  // A new instrument brings its own tuning, and no capo.
  const tuning = other ? usualTuning(wanted.instrument) : now.tuning;
  const capo = formatCapo(other ? undefined : now.capo);
  const fields: [string, string][] = [];
  if (other) fields.push(['instrument', wanted.instrument.name]);
  if (!sameTuning(tuning, wanted.tuning))
    fields.push(['tuning', formatTuning(wanted.tuning, wanted.instrument)]);
  if (capo !== formatCapo(wanted.capo)) fields.push(['capo', formatCapo(wanted.capo)]);
  const column = Math.max(0, ...fields.map(([name]) => name.length + 2));
  return fields.map(([name, value]) => fieldLine(name, value, column));
}
