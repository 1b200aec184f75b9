import type { Instrument } from '../instrument/instrument';
import { nameKey } from '../instrument/nameMatching';
import { stringNumber, type Tuning } from '../instrument/tuning';
import { formatTuningNotes, sameTuning, stepsFrom, tuningDistance } from '../instrument/tuningFormat';
import { tuningsFor } from '../instrument/tunings';
import { readTuning } from '../instrument/tuningValue';
import type { TabDocument } from '../notation/tabDocument';
import type { Place, Settings } from './records';
import type { TuningChoice } from './serviceApi';

/** A tuning on offer. */
export interface OfferedTuning extends TuningChoice {
  readonly tuning: Tuning;
  readonly own: boolean;
  /** Something to know before tuning so. */
  readonly remark: string | undefined;
}

/** Tunings on offer at a place of a document, nearest to the one in force first. */
export function tuningChoices(
  document: TabDocument,
  place: Place,
  settings: Settings,
): readonly TuningChoice[] {
  const { instrument, tuning } = document.headerAt(place.line);
  return offeredTunings(instrument, tuning, settings).map(({ value, notes, steps }) => ({
    value,
    notes,
    steps,
  }));
}

/**
 * The user's own tunings and all that have a name on the instrument, by the half steps of retuning from `current`;
 * of equals the user's own come first. A name of the user's hides the trade's. What cannot be read is left out.
 */
export function offeredTunings(
  instrument: Instrument,
  current: Tuning,
  settings: Settings,
): readonly OfferedTuning[] {
  const own = Object.keys(settings.tunings).flatMap((value) => {
    const read = readTuning(value, { instrument, userTunings: settings.tunings });
    return read.ok ? [{ value, tuning: read.value, own: true, remark: undefined }] : [];
  });
  const taken = new Set(own.map(({ value }) => nameKey(value)));
  const named = tuningsFor(instrument)
    .filter(({ name }) => !taken.has(nameKey(name)))
    .map(({ name, strings, remark }) => ({
      value: name,
      tuning: { strings, name, text: name },
      own: false,
      remark,
    }));
  return [...own, ...named]
    .map((offer) => ({ ...offer, distance: tuningDistance(current, offer.tuning) }))
    .sort((a, b) => a.distance - b.distance)
    .map(({ value, tuning, own: isOwn, remark }) => ({
      value,
      tuning,
      own: isOwn,
      remark,
      notes: formatTuningNotes(tuning),
      steps: stepsInWords(current, tuning),
    }));
}

/**
 * What to turn to get from one tuning to another, by string, the highest number first.
 * @example stepsInWords(standard, dropD) // 'string 6 down 2'
 */
export function stepsInWords(from: Tuning, to: Tuning): string {
  if (sameTuning(from, to)) return 'as it is';
  const words = stepsFrom(from, to).flatMap((steps, index) => {
    const number = stringNumber(to, index);
    if (steps === undefined) return [`string ${number} added`];
    return steps === 0 ? [] : [`string ${number} ${steps < 0 ? 'down' : 'up'} ${Math.abs(steps)}`];
  });
  for (let number = to.strings.length + 1; number <= from.strings.length; number++)
    words.unshift(`string ${number} off`);
  return words.length > 0 ? words.join(', ') : 'other courses';
}
