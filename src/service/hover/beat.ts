import { barLength, isCompound, type Meter } from '../../music/meter';
import { add, formatFraction, fraction, subtract, ZERO, type Fraction } from '../../music/fraction';
import { syllableAt } from '../../notation/time/countPlan';
import { countUnit } from '../../notation/time/syllables';
import { meterTicks } from '../../notation/time/ticks';
import type { BarReading, SystemReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { quoted } from './text';

/**
 * Where a moment lies, as people count it: `bar 2, beat 3 &`; with the part where there are several.
 * @param time quarter notes from the system's start
 */
export function whereInWords(document: TabDocument, system: System, time: Fraction): string {
  const { reading, header } = system;
  const { firstBar, part } = document.placeOf(system);
  const at = barAt(reading.bars, time);
  const bar = reading.bars[at];
  const words = bar
    ? `bar ${firstBar + at}, ${beatInWords(header.meter, bar, time, isDotted(reading, header.meter))}`
    : `bar ${firstBar}`;
  return part === undefined || part === '' ? words : `${words}, part ${quoted(part)}`;
}

/** The bar in which a moment lies; what is past the end is in the last one. */
function barAt(bars: readonly BarReading[], time: Fraction): number {
  let at = 0;
  bars.forEach((bar, i) => {
    if (bar.onset.n * time.d <= time.n * bar.onset.d) at = i;
  });
  return at;
}

/**
 * The beat in a bar by its syllables: `beat 3`, `beat 3 &`. What no syllable names is told by its distance from the
 * last one, in quarter notes.
 */
export function beatInWords(meter: Meter, bar: BarReading, time: Fraction, dotted: boolean): string {
  const ticks = meterTicks(meter);
  // A pickup is the end of a bar.
  const missing = bar.pickup ? subtract(barLength(meter), bar.length) : ZERO;
  const passed = add(subtract(time, bar.onset), missing);
  const tick = (passed.n * ticks.perQuarter) / passed.d;
  const unit = countUnit(ticks, dotted);
  const beat = Math.floor(tick / unit.ticks) + 1;
  const start = (beat - 1) * unit.ticks;
  const exact = syllableAt(tick, unit);
  if (exact !== undefined) return nameOfBeat(beat, exact);
  const named = [0, ...PLAIN_PARTS.map((part) => unit.parts[part] ?? 0)].filter((at) => start + at < tick);
  const last = start + Math.max(0, ...named);
  const rest = subtract(passed, fraction(last, ticks.perQuarter));
  return `${formatFraction(rest)} of a quarter note after ${nameOfBeat(beat, syllableAt(last, unit) ?? '')}`;
}

const PLAIN_PARTS = ['&', 'e', 'a'] as const;

function nameOfBeat(beat: number, syllable: string): string {
  return syllable === '' || /\d/.test(syllable) ? `beat ${beat}` : `beat ${beat} ${syllable}`;
}

/** Whether a system counts dotted beats: in a meter that has them, unless its count row has numbers beyond them. */
export function isDotted(reading: SystemReading, meter: Meter): boolean {
  if (!isCompound(meter)) return false;
  const count = reading.rows.find(({ row }) => row === 'count');
  const numbers = count?.marks.flatMap(({ text }) => (text.match(/\d+/g) ?? []).map(Number)) ?? [];
  return numbers.every((number) => number <= meter.upper / 3);
}

/** Whether the rhythm is written or worked out. */
export function timingWords({ reading }: System): string {
  return reading.timing === 'counted' ? 'rhythm by the count row' : 'rhythm inferred from the columns';
}
