import type { Gauge } from '../gauges';
import type { Instrument } from '../instrument';
import type { Construction } from './constructions';
import { thousandthsOf } from './unitWeight';

/** What plain and what wound strings of a set are made of. `gauges:` cannot say it, so it is assumed and told. */
export interface Materials {
  readonly plain: 'plain steel' | 'plain nylon';
  readonly wound: Construction;
  /** What is strung with nylon and has a steel set on it: the set pulls about twice as hard. */
  readonly steelOnNylonInstrument: boolean;
}

/** The thickest wire that ASTM A228 lists here, thousandths of an inch; plain strings beyond it are nylon. */
const THICKEST_STEEL = 26.5;

/** The thinnest nylon of the published sizes; plain strings below it are steel. */
const THINNEST_NYLON = 17.5;

/** Instruments that are usually strung with nylon, and those whose wound strings are of one kind. Common practice, no source. */
const NYLON: readonly string[] = [
  'classical guitar',
  'ukulele',
  'baritone ukulele',
  'requinto',
  'terz guitar',
];
const BRONZE: readonly string[] = [
  '12-string guitar',
  'tenor guitar',
  'mandolin',
  'mandola',
  'octave mandolin',
  'Irish bouzouki',
  'Russian seven-string guitar',
];
const BASS: readonly string[] = ['bass', 'five-string bass', 'six-string bass', 'six-string bass guitar'];

/**
 * What a set is made of: by the instrument, unless the gauges say otherwise. A plain string thinner than any nylon makes
 * it a steel set, one thicker than music wire a nylon set.
 * @param gauges low string first; undefined where none is known
 * @example materialsOf(GUITAR, undefined).wound // 'nickel-plated wound'
 */
export function materialsOf(instrument: Instrument, gauges: readonly Gauge[] | undefined): Materials {
  const plain = (gauges ?? [])
    .flatMap((gauge) => [gauge, ...(gauge.partner ? [gauge.partner] : [])])
    .filter(({ wound }) => !wound)
    .map(({ millimetres }) => thousandthsOf(millimetres));
  const usuallyNylon = NYLON.includes(instrument.name);
  const nylon = plain.some((size) => size < THINNEST_NYLON)
    ? false
    : plain.some((size) => size > THICKEST_STEEL) || usuallyNylon;
  if (nylon)
    return { plain: 'plain nylon', wound: 'silvered copper on nylon', steelOnNylonInstrument: false };
  return {
    plain: 'plain steel',
    wound: BASS.includes(instrument.name)
      ? 'bass round wound'
      : BRONZE.includes(instrument.name)
        ? 'phosphor bronze wound'
        : 'nickel-plated wound',
    steelOnNylonInstrument: usuallyNylon && plain.length > 0,
  };
}
