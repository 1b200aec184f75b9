import { fraction, type Fraction } from '../../music/fraction';
import { formatMeter } from '../../music/meter';
import { countUnit, splitNumbers, splitRun, type CountUnit, type Syllable } from './syllables';
import { LOWER_NOTE, meterTicks, quarters } from './ticks';
import type { BarTime, CountProblem, CountSyllable, TimeInput, TimeReading } from './timeInput';

/** A column held to a time: ticks from the start of the full bar. */
interface Pin {
  readonly column: number;
  readonly tick: number;
}

/** A syllable that names a time in its bar. */
interface Timed extends Pin {
  readonly syllable: Syllable;
}

/**
 * Times by a count row (section 7 of the notation). All columns between bar signs carry time, second digits too; bar
 * signs and syllables are pins, and between two of them time runs evenly.
 *
 * Choices the notation leaves open:
 * - A syllable stands where its first character does. Over any column of a note that no syllable pins yet it pins the
 *   note's first column, else its own.
 * - The first of two syllables that contradict each other holds.
 * - A 1 past the first column of its bar makes the columns before it padding.
 * - Parts of a beat before a bar's first number belong to the number before that one; in a bar without numbers to its
 *   first beat, or to its last where the bar may be a pickup.
 * - A pickup whose first syllable is past the bar's first column begins as early as the columns before that
 *   syllable last at the pace of those after it, to the nearest half of the lower note; columns that last less than
 *   half a lower note and hold no note are padding.
 * @returns the reading, and how many syllables pin something.
 */
export function readCounted(
  input: TimeInput,
  count: readonly CountSyllable[],
): { readonly reading: TimeReading; readonly pins: number } {
  const meter = meterTicks(input.meter);
  const problems: CountProblem[] = [];
  const byBar = syllablesByBar(input, count, problems);
  const highest = byBar.reduce(
    (most, bar) => bar.reduce((m, s) => (s.kind === 'number' ? Math.max(m, s.value) : m), most),
    0,
  );
  const unit = countUnit(meter, meter.compound && highest <= meter.beats);
  const lastEnd = input.bars.at(-1)?.end ?? 0;
  const width = Math.max(input.width ?? 0, lastEnd);
  const bars: BarTime[] = [];
  const times: Fraction[] = [];
  let onset = 0;
  let pinCount = 0;
  input.bars.forEach((bar, index) => {
    const mayPickup = index === 0 && (input.firstInPart || input.firstInSection);
    const timed = timeSyllables(byBar[index] ?? [], unit, mayPickup, formatMeter(input.meter), problems);
    const placed = pinColumns(timed, bar.start, input);
    const from = mayPickup ? pickupStart(placed[0], bar, input.onsets, meter.perBar) : 0;
    const pins = fitPins(placed, bar.start, from, input.onsets, problems);
    pinCount += pins.length;
    const open: Pin = { column: bar.start, tick: from };
    const close: Pin = { column: bar.end, tick: meter.perBar };
    while (times.length < bar.start) times.push(quarters(onset, meter.perQuarter));
    fillColumns(times, [open, ...pins, close], onset - from, meter.perQuarter);
    const length = meter.perBar - from;
    bars.push({
      onset: quarters(onset, meter.perQuarter),
      length: quarters(length, meter.perQuarter),
      pickup: from > 0,
    });
    onset += length;
  });
  while (times.length <= width) times.push(quarters(onset, meter.perQuarter));
  problems.sort((a, b) => a.column - b.column);
  return { reading: { timing: 'counted', bars, columnTimes: times, exact: true, problems }, pins: pinCount };
}

function problem(
  kind: CountProblem['kind'],
  syllable: { readonly text: string; readonly column: number },
  facts: CountProblem['facts'],
): CountProblem {
  return { kind, column: syllable.column, width: syllable.text.length, text: syllable.text, facts };
}

/** Takes the runs apart, sorts the syllables into bars and the digits into numbers. */
function syllablesByBar(
  input: TimeInput,
  count: readonly CountSyllable[],
  problems: CountProblem[],
): readonly (readonly Syllable[])[] {
  const byBar: Syllable[][] = input.bars.map(() => []);
  const pieces = count.flatMap((run) => splitRun(run.text, run.column));
  let bar = 0;
  let previous = 0;
  pieces.forEach(({ text, column, part }, index) => {
    while (bar < input.bars.length && column >= (input.bars[bar]?.end ?? 0)) {
      bar++;
      previous = 0;
    }
    const syllables = byBar[bar];
    if (syllables === undefined || column < (input.bars[bar]?.start ?? 0)) {
      problems.push(problem('count-fit', { text, column }, { reason: 'outside' }));
    } else if (part !== undefined) {
      syllables.push({ kind: 'part', text, column, part });
    } else if (!/^\d/.test(text)) {
      syllables.push({ kind: 'unknown', text, column });
    } else {
      const next = pieces[index + 1]?.column ?? Infinity;
      const alone = previous === 0 && next >= (input.bars[bar]?.end ?? 0);
      // `12` alone in a first bar of 12/8 is its last eighth, not 1 and 2 in two columns.
      const last = bar === 0 && alone && Number(text) === input.meter.upper;
      const numbers = last ? [Number(text)] : splitNumbers(text, previous, input.meter.upper);
      let at = column;
      for (const value of numbers) {
        const own = numbers.length === 1 ? text : String(value);
        syllables.push({ kind: 'number', text: own, column: at, value });
        at += own.length;
        previous = value;
      }
    }
  });
  return byBar;
}

/** Gives a bar's syllables their ticks and drops, with a problem, those that have none or come too late. */
function timeSyllables(
  syllables: readonly Syllable[],
  unit: CountUnit,
  mayPickup: boolean,
  meter: string,
  problems: CountProblem[],
): readonly Timed[] {
  const timed: Timed[] = [];
  const first = syllables.find((s) => s.kind === 'number' && s.value <= unit.highest);
  // Undefined past a number that was dropped: its parts are dropped with it, and one problem is enough.
  let beat: number | undefined = first?.kind === 'number' ? first.value - 1 : mayPickup ? unit.highest : 1;
  for (const syllable of syllables) {
    let tick = 0;
    if (syllable.kind === 'unknown') {
      problems.push(problem('count-syllable', syllable, { meter, dotted: unit.dotted ? 1 : 0 }));
      continue;
    } else if (syllable.kind === 'number') {
      beat = syllable.value;
      if (beat < 1 || beat > unit.highest) {
        problems.push(problem('count-range', syllable, { meter, highest: unit.highest }));
        beat = undefined;
        continue;
      }
      tick = (beat - 1) * unit.ticks;
    } else {
      if (beat === undefined) continue;
      const part = unit.parts[syllable.part];
      if (part === undefined) {
        problems.push(problem('count-syllable', syllable, { meter, dotted: 1 }));
        continue;
      }
      tick = (beat - 1) * unit.ticks + part;
    }
    const before = timed.at(-1);
    if (tick < 0 || (before !== undefined && tick <= before.tick)) {
      problems.push(problem('count-order', syllable, { after: before?.syllable.text ?? '' }));
      if (syllable.kind === 'number') beat = undefined;
      continue;
    }
    timed.push({ syllable, column: syllable.column, tick });
  }
  return timed;
}

/** Moves syllables that stand over a note, or over the sign that brings it from nowhere, to its first column. */
function pinColumns(timed: readonly Timed[], start: number, input: TimeInput): readonly Timed[] {
  let last = start - 1;
  let next = input.onsets.findIndex((onset) => onset >= start);
  if (next < 0) next = input.onsets.length;
  const first = next;
  return timed.map((syllable, k) => {
    while ((input.onsets[next] ?? Infinity) <= syllable.column) next++;
    let column = syllable.column;
    // The nearest note before the syllable that reaches it and that no syllable before has passed.
    for (let i = next - 1; i >= first; i--) {
      const onset = input.onsets[i] ?? 0;
      if (onset <= last) break;
      if ((input.onsetEnds[i] ?? onset) >= column) {
        column = onset;
        break;
      }
    }
    // Over the sign that brings the next note from nowhere, where that note has no syllable of its own.
    const following = input.onsets[next];
    if (
      following !== undefined &&
      column === syllable.column &&
      input.onsets[next - 1] !== column &&
      (input.onsetStarts?.[next] ?? following) <= column &&
      (timed[k + 1]?.column ?? Infinity) > (input.onsetEnds[next] ?? following)
    )
      column = following;
    last = column;
    return { syllable: syllable.syllable, tick: syllable.tick, column };
  });
}

/** The tick of the full bar at which a first bar begins; 0 when it is no pickup. */
function pickupStart(
  first: Timed | undefined,
  bar: { readonly start: number; readonly end: number },
  onsets: readonly number[],
  perBar: number,
): number {
  if (first === undefined || first.tick === 0 || first.column === bar.start) return first?.tick ?? 0;
  const before = ((perBar - first.tick) * (first.column - bar.start)) / (bar.end - first.column);
  const half = LOWER_NOTE / 2;
  if (before < half && !notesBetween(onsets, bar.start, first.column)) return first.tick;
  const nearest = Math.round((first.tick - before) / half) * half;
  return Math.max(0, nearest < first.tick ? nearest : first.tick - half);
}

function notesBetween(onsets: readonly number[], start: number, end: number): boolean {
  return onsets.some((onset) => onset >= start && onset < end);
}

/** Drops, with a problem, a first pin that contradicts the bar sign before it. */
function fitPins(
  placed: readonly Timed[],
  start: number,
  from: number,
  onsets: readonly number[],
  problems: CountProblem[],
): readonly Pin[] {
  const first = placed[0];
  if (first === undefined) return placed;
  if (first.column === start && first.tick > from) {
    problems.push(problem('count-fit', first.syllable, { reason: 'late', expected: '1' }));
    return placed.slice(1);
  }
  if (first.column > start && first.tick === from && notesBetween(onsets, start, first.column)) {
    problems.push(problem('count-fit', first.syllable, { reason: 'notes-before' }));
    return placed.slice(1);
  }
  return placed;
}

function fillColumns(times: Fraction[], pins: readonly Pin[], offset: number, perQuarter: number): void {
  for (let i = 1; i < pins.length; i++) {
    const from = pins[i - 1];
    const to = pins[i];
    if (from === undefined || to === undefined) continue;
    const span = to.column - from.column;
    for (let column = from.column; column < to.column; column++) {
      const ticks = (offset + from.tick) * span + (to.tick - from.tick) * (column - from.column);
      times.push(fraction(ticks, perQuarter * span));
    }
  }
}
