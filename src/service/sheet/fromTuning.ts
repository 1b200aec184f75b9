import type { Tuning } from '../../instrument/tuning';
import { sameTuning } from '../../instrument/tuningFormat';
import { readTuning } from '../../instrument/tuningValue';
import { usualTuning } from '../../notation/headerViews';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import type { SheetRetuning } from './sheetAnswer';

/** The tuning that a player comes from, and why that one. */
export interface FromTuning {
  readonly tuning: Tuning;
  readonly why: SheetRetuning['from']['why'];
}

/**
 * The tuning to come from: the one that was asked for; else the last other one of the same instrument that is written
 * above a line for the same part or for all of them; else the instrument's usual one.
 */
export function fromTuning(
  document: TabDocument,
  line: number,
  asked: string | undefined,
  settings: Settings,
): FromTuning | ServiceError {
  const { instrument } = document.headerAt(line);
  if (asked !== undefined) {
    const read = readTuning(asked, { instrument, userTunings: settings.tunings });
    return read.ok ? { tuning: read.value, why: 'asked' } : { error: read.error.message };
  }
  const earlier = earlierTuning(document, line);
  return earlier ? { tuning: earlier, why: 'earlier' } : { tuning: usualTuning(instrument), why: 'usual' };
}

function earlierTuning(document: TabDocument, line: number): Tuning | undefined {
  const here = document.headerAt(line);
  let last: Tuning | undefined;
  for (const { fields, after } of document.fieldGroups) {
    if ((fields[0]?.lineIndex ?? Infinity) > line) break;
    if (after.instrument !== here.instrument) continue;
    if (after.part !== undefined && after.part !== here.part) continue;
    if (!sameTuning(after.tuning, here.tuning)) last = after.tuning;
  }
  return last;
}
