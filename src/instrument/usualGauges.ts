import { readGauges, type Gauge } from './gauges';
import type { Instrument } from './instrument';
import { usualStrings } from './stringsFromNotes';

const KNOWN = new WeakMap<Instrument, readonly Gauge[]>();

/**
 * The gauges of the instrument's usual set, low string first; undefined where none is usual. The same record each time,
 * so that `===` tells the usual set from one that was written.
 * @example usualGauges(GUITAR)?.at(-1)?.text // '10'
 */
export function usualGauges(instrument: Instrument): readonly Gauge[] | undefined {
  const text = instrument.usualGauges;
  if (text === undefined) return undefined;
  let gauges = KNOWN.get(instrument);
  if (gauges === undefined) {
    const strings = usualStrings(instrument);
    const read = readGauges(text, strings.length, {
      strings,
      name: undefined,
      text: instrument.usualTuning,
    });
    if (!read.ok)
      throw new Error(`The usual gauges of ${instrument.name} cannot be read: ${read.error.message}`);
    gauges = read.value;
    KNOWN.set(instrument, gauges);
  }
  return gauges;
}
