import { fraction, type Fraction } from './fraction';
import { failed, ok, type Result } from './result';

/** A time signature, such as 6/8. */
export interface Meter {
  readonly upper: number;
  readonly lower: number;
}

/** 4/4, what holds where none is written. */
export const COMMON_METER: Meter = { upper: 4, lower: 4 };

/**
 * Reads `4/4`, `6 / 8` and the like: 1–64 over 1, 2, 4, 8, 16, 32 or 64.
 * @example readMeter('6/8') // { upper: 6, lower: 8 }
 */
export function readMeter(text: string): Result<Meter> {
  const match = /^\s*(\d{1,2})\s*\/\s*(\d{1,2})\s*$/.exec(text);
  const upper = Number(match?.[1]);
  const lower = Number(match?.[2]);
  if (!match || upper < 1 || upper > 64 || ![1, 2, 4, 8, 16, 32, 64].includes(lower)) {
    return failed(
      'meter',
      'A meter is two numbers such as 4/4 or 6/8; the lower one is 1, 2, 4, 8, 16, 32 or 64.',
      0,
      text.length,
      ['4/4', '3/4', '6/8'],
    );
  }
  return ok({ upper, lower });
}

/** The length of a bar in quarter notes. */
export function barLength(meter: Meter): Fraction {
  return fraction(meter.upper * 4, meter.lower);
}

/** Whether the meter is 6, 9 or 12 over 8 or 16, felt in dotted beats of three lower notes each. */
export function isCompound(meter: Meter): boolean {
  return (
    (meter.upper === 6 || meter.upper === 9 || meter.upper === 12) &&
    (meter.lower === 8 || meter.lower === 16)
  );
}

export function formatMeter(meter: Meter): string {
  return `${meter.upper}/${meter.lower}`;
}
