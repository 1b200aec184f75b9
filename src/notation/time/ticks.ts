import { fraction, type Fraction } from '../../music/fraction';
import { isCompound, type Meter } from '../../music/meter';

/**
 * A meter in whole ticks. The lower note of every meter has 144 of them, which 1, 2, 3, 4, 6, 8, 9, 12, 16 and 24
 * columns a beat divide, and so do the halves, quarters and thirds that a count row names: all sums of the readers
 * are sums of integers, and fractions are made at the end.
 */
export interface MeterTicks {
  readonly perQuarter: number;
  /**
   * What the meter is felt in. 6, 9 and 12 over 8 or 16 have dotted beats of three lower notes; in every other meter,
   * uneven ones such as 5/4 and 7/8 included, the lower note is the beat, since nothing in the text groups them.
   */
  readonly perBeat: number;
  readonly beats: number;
  readonly perBar: number;
  readonly compound: boolean;
}

/** Ticks of the lower note of any meter. */
export const LOWER_NOTE = 144;

/**
 * @example meterTicks({ upper: 6, lower: 8 }) // two beats of 432 ticks, 288 ticks a quarter note
 */
export function meterTicks(meter: Meter): MeterTicks {
  const compound = isCompound(meter);
  return {
    perQuarter: (LOWER_NOTE * meter.lower) / 4,
    perBeat: compound ? 3 * LOWER_NOTE : LOWER_NOTE,
    beats: compound ? meter.upper / 3 : meter.upper,
    perBar: LOWER_NOTE * meter.upper,
    compound,
  };
}

/*
 * The same few times come in every system: they are shared, which saves a division and a record a column. Bounded, as
 * a system can be as long as a text.
 */
const MOST_KNOWN = 10_000;
const known = new Map<number, Map<number, Fraction>>();

/**
 * Ticks as a fraction of a quarter note.
 * @example quarters(72, 144) // { n: 1, d: 2 }
 */
export function quarters(ticks: number, perQuarter: number): Fraction {
  let byTicks = known.get(perQuarter);
  if (!byTicks) known.set(perQuarter, (byTicks = new Map<number, Fraction>()));
  let time = byTicks.get(ticks);
  if (!time) {
    if (byTicks.size >= MOST_KNOWN) byTicks.clear();
    byTicks.set(ticks, (time = fraction(ticks, perQuarter)));
  }
  return time;
}
