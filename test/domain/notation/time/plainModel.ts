import { add, compare, fraction, multiply, toNumber, type Fraction } from '../../../../src/music/fraction';
import { barLength, isCompound } from '../../../../src/music/meter';
import type { TimeInput } from '../../../../src/notation/time/timeInput';

/** One of the readings that section 7 of the notation allows. */
export interface PlainReading {
  readonly padding: number;
  readonly skipDigits: boolean;
  readonly missing: number;
  readonly even: number;
  readonly cost: number;
  /** For each bar that is read exactly the time of each onset in it, from the bar's start; undefined for other bars. */
  readonly bars: readonly (readonly Fraction[] | undefined)[];
  readonly lengths: readonly Fraction[];
}

const EVEN = [1, 2, 3, 4, 6, 8, 9, 12, 16, 24];

/** Cost of a place in a beat, as section 7 lists them. */
function cost(place: Fraction): number {
  return { 1: 0, 2: 1, 3: 2, 4: 2, 6: 4, 8: 5, 12: 8, 16: 8 }[place.d] ?? 12;
}

/**
 * All readings of a system without a count, slowly and by fractions: a second writing of section 7 to hold the fast one to.
 * The order is that of the rules for equals: nothing missing, all digits counted, least padding.
 */
export function plainReadings(input: TimeInput): readonly PlainReading[] {
  const { meter, bars } = input;
  const beats = isCompound(meter) ? meter.upper / 3 : meter.upper;
  const beat = fraction(barLength(meter).n, barLength(meter).d * beats);
  const readings: PlainReading[] = [];
  for (const missing of [0, 1, 2, 3]) {
    for (const skipDigits of [false, true]) {
      for (const padding of [0, 1, 2]) {
        if (missing > 0 && padding === 0) continue;
        const carriers = bars.map(({ start, end }) => {
          const columns: number[] = [];
          for (let c = start + padding; c < end; c++)
            if (!skipDigits || !input.secondDigits.has(c)) columns.push(c);
          return columns;
        });
        const inBars = input.onsets.filter((o) => bars.some(({ start, end }) => o >= start && o < end));
        if (inBars.some((onset) => !carriers.some((columns) => columns.includes(onset)))) continue;
        const counts = carriers.map((columns, i) => {
          const { start, end } = bars[i] ?? { start: 0, end: 0 };
          return end - start < padding ? end - start - padding + missing : columns.length + missing;
        });
        let total = missing > 0 ? inBars.length : 0;
        const lengths: Fraction[] = [];
        const times = bars.map(({ start, end }, i) => {
          const own = inBars.filter((onset) => onset >= start && onset < end);
          const count = counts[i] ?? 0;
          const next = counts[1] ?? 0;
          const mayPickup =
            i === 0 && (input.firstInPart || input.firstInSection) && bars.length > 1 && count > 0;
          let perBeat = count / beats;
          let lasts = fraction(beats);
          if (mayPickup && count <= (next * 3) / 4) {
            const inBeats = fraction(count * beats, next);
            if (2 % inBeats.d === 0 || (isCompound(meter) && inBeats.d === 3)) {
              perBeat = next / beats;
              lasts = inBeats;
            }
          }
          lengths.push(multiply(lasts, beat));
          if (!EVEN.includes(perBeat)) {
            total += 12 * own.length;
            return undefined;
          }
          return own.map((onset) => {
            const at = fraction((carriers[i] ?? []).indexOf(onset), perBeat);
            // Place in the beat, counted so that the bar ends on one.
            const place = add(at, fraction(-lasts.n, lasts.d));
            total += cost(place);
            return multiply(at, beat);
          });
        });
        const even = times.filter((bar) => bar !== undefined).length;
        readings.push({ padding, skipDigits, missing, even, cost: total, bars: times, lengths });
      }
    }
  }
  return readings;
}

/** The reading that the rules choose. */
export function plainReading(input: TimeInput): PlainReading {
  const sorted = [...plainReadings(input)].sort((a, b) => b.even - a.even || a.cost - b.cost);
  const best = sorted[0];
  if (best === undefined) throw new Error('there is always the reading that leaves nothing out');
  return best;
}

/** Whether times never fall from one column to the next. */
export function neverFalls(times: readonly Fraction[]): boolean {
  return times.every((time, i) => {
    const before = times[i - 1];
    return before === undefined || (compare(before, time) <= 0 && Number.isFinite(toNumber(time)));
  });
}
