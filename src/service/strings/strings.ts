import type { StrungNeck } from '../../instrument/strings/stringLoads';
import { usualGauges } from '../../instrument/usualGauges';
import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import type { Place, Settings } from '../records';
import { strainAnswer } from './strainAnswer';
import type { StringsAnswer } from './stringsAnswer';

/**
 * What the strings bear under the fields in force at a place: each string's change against the usual set, its tension,
 * for plain steel its share of the least strength, then the whole set, with what to know and the usual cautions.
 * @example strings(document, { line: 0, character: 0 }, DEFAULT_SETTINGS).total?.newtons
 */
export function strings(document: TabDocument, place: Place, settings: Settings): StringsAnswer {
  return strainAnswer(strungNeck(document.headerAt(place.line)), settings.strain);
}

/** The strings that a header puts on a neck. */
export function strungNeck({ instrument, tuning, gauges, scaleLength, referencePitch }: Header): StrungNeck {
  // The instrument's own record is what holds where no gauges are written.
  const written = gauges === usualGauges(instrument) ? undefined : gauges;
  return { instrument, tuning, gauges: written, scaleLength, referencePitch };
}
