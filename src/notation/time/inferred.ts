import { fraction, ZERO, type Fraction } from '../../music/fraction';
import { measureColumns, type Columns } from './columns';
import { columnsABeat, MISSING_COST, placeCosts, UNEVEN_COST } from './places';
import { snapGrid, snapOnsets } from './snap';
import { LOWER_NOTE, meterTicks, quarters, type MeterTicks } from './ticks';
import type { BarTime, CountProblem, TimeInput, TimeReading } from './timeInput';

/** What carries no time, the same for all bars of a system. */
interface Candidate {
  /** Columns at the start of every bar. */
  readonly padding: number;
  /** Whether columns of second digits carry none. */
  readonly skipDigits: boolean;
  /** Columns that the end of every bar lacks. */
  readonly missing: number;
}

/** How a bar is read by a candidate; one object is used again for all bars and candidates. */
interface BarPlan {
  /** Columns that carry time, the missing ones included. */
  columns: number;
  /** Columns a beat, 0 for a bar that does not divide evenly. */
  perBeat: number;
  /** Ticks. */
  length: number;
  pickup: boolean;
}

const MOST_PADDING = 2;
const MOST_MISSING = 3;

/**
 * Times worked out from the columns alone (section 7 of the notation).
 *
 * Of at most 18 candidates the one with the most even bars is taken, then the one with the plainest places for its
 * notes, then nothing missing, all digits counted, least padding. A note in a bar that is not even costs what the least plain
 * place costs, so that of two candidates with as many even bars the one that reads more notes exactly is taken. A
 * candidate whose padding would swallow a note is none.
 *
 * A first bar of a part or section is a pickup when it has at most three quarters of the next bar's columns and lasts,
 * at the next bar's pace, whole or half beats, or in dotted beats whole lower notes (an eighth before a 6/8). It is even where the next bar is.
 */
export function readInferred(input: TimeInput, problems: readonly CountProblem[]): TimeReading {
  const meter = meterTicks(input.meter);
  const columns = measureColumns(input);
  const mayPickup = (input.firstInPart || input.firstInSection) && input.bars.length > 1;
  return writeTimes(columns, bestCandidate(columns, meter, mayPickup), meter, mayPickup, problems);
}

function bestCandidate(columns: Columns, meter: MeterTicks, mayPickup: boolean): Candidate {
  const plan: BarPlan = { columns: 0, perBeat: 0, length: 0, pickup: false };
  const mostPadding = Math.min(MOST_PADDING, columns.leastOffset);
  let best: Candidate = { padding: 0, skipDigits: false, missing: 0 };
  let bestEven = -1;
  let bestCost = 0;
  // In the order of the last three rules, so that of equals the first is kept.
  for (let missing = 0; missing <= (mostPadding > 0 ? MOST_MISSING : 0); missing++) {
    for (let skip = 0; skip <= (columns.hasSecondDigits ? 1 : 0); skip++) {
      for (let padding = missing > 0 ? 1 : 0; padding <= mostPadding; padding++) {
        const candidate: Candidate = { padding, skipDigits: skip === 1, missing };
        let even = 0;
        let cost = missing > 0 ? MISSING_COST * columns.onsetColumns.length : 0;
        for (let bar = 0; bar < columns.bars; bar++) {
          planBar(plan, columns, bar, candidate, meter, mayPickup);
          if (plan.perBeat > 0) even++;
          cost += placesCost(columns, bar, candidate, plan);
        }
        if (even > bestEven || (even === bestEven && cost < bestCost)) {
          best = candidate;
          bestEven = even;
          bestCost = cost;
        }
      }
    }
  }
  return best;
}

function carrying(columns: Columns, bar: number, candidate: Candidate): number {
  const count = (columns.ends[bar] ?? 0) - (columns.starts[bar] ?? 0) - candidate.padding + candidate.missing;
  return candidate.skipDigits ? count - (columns.barSeconds[bar] ?? 0) : count;
}

function planBar(
  plan: BarPlan,
  columns: Columns,
  bar: number,
  candidate: Candidate,
  meter: MeterTicks,
  mayPickup: boolean,
): void {
  const count = carrying(columns, bar, candidate);
  plan.columns = count;
  plan.perBeat = columnsABeat(count, meter.beats);
  plan.length = meter.perBar;
  plan.pickup = false;
  if (bar > 0 || !mayPickup || count <= 0) return;
  const next = carrying(columns, 1, candidate);
  if (count * 4 > next * 3) return;
  const ticks = (count * meter.perBar) / next;
  if (ticks % (meter.perBeat / 2) !== 0 && !(meter.compound && ticks % LOWER_NOTE === 0)) return;
  plan.perBeat = columnsABeat(next, meter.beats);
  plan.length = ticks;
  plan.pickup = true;
}

function placesCost(columns: Columns, bar: number, candidate: Candidate, plan: BarPlan): number {
  const from = columns.firstOnset[bar] ?? 0;
  const to = columns.firstOnset[bar + 1] ?? 0;
  const perBeat = plan.perBeat;
  if (perBeat === 0) return (to - from) * UNEVEN_COST;
  const costs = placeCosts(perBeat);
  // Beats are counted from the bar's end, since a pickup may begin between two.
  const shift = perBeat - (plan.columns % perBeat) - candidate.padding;
  let cost = 0;
  for (let i = from; i < to; i++) {
    const seconds = candidate.skipDigits ? (columns.onsetSeconds[i] ?? 0) : 0;
    cost += costs[((columns.onsetOffsets[i] ?? 0) - seconds + shift + MOST_PADDING * perBeat) % perBeat] ?? 0;
  }
  return cost;
}

function writeTimes(
  columns: Columns,
  candidate: Candidate,
  meter: MeterTicks,
  mayPickup: boolean,
  problems: readonly CountProblem[],
): TimeReading {
  const plan: BarPlan = { columns: 0, perBeat: 0, length: 0, pickup: false };
  const bars: BarTime[] = [];
  const times: Fraction[] = [];
  let onset = 0;
  let onsetTime = ZERO;
  let exact = true;
  for (let bar = 0; bar < columns.bars; bar++) {
    planBar(plan, columns, bar, candidate, meter, mayPickup);
    while (times.length < (columns.starts[bar] ?? 0)) times.push(onsetTime);
    if (plan.perBeat > 0) {
      writeEvenBar(times, columns, bar, candidate, onset, meter.perBeat / plan.perBeat, meter.perQuarter);
    } else {
      exact = false;
      writeSnappedBar(times, columns, bar, candidate, plan, onset, meter);
    }
    bars.push({ onset: onsetTime, length: quarters(plan.length, meter.perQuarter), pickup: plan.pickup });
    onset += plan.length;
    onsetTime = quarters(onset, meter.perQuarter);
  }
  while (times.length <= columns.width) times.push(onsetTime);
  return { timing: 'inferred', bars, columnTimes: times, exact, problems };
}

function writeEvenBar(
  times: Fraction[],
  columns: Columns,
  bar: number,
  candidate: Candidate,
  onset: number,
  step: number,
  perQuarter: number,
): void {
  const end = columns.ends[bar] ?? 0;
  const first = (columns.starts[bar] ?? 0) + candidate.padding;
  let tick = onset;
  let time = quarters(tick, perQuarter);
  for (let column = times.length; column < end; column++) {
    times.push(time);
    if (column >= first && !(candidate.skipDigits && columns.isSecond[column] === 1)) {
      tick += step;
      time = quarters(tick, perQuarter);
    }
  }
}

/** Onsets go to the grid; between them, the bar's start and its end, time runs evenly over the columns that carry it. */
function writeSnappedBar(
  times: Fraction[],
  columns: Columns,
  bar: number,
  candidate: Candidate,
  plan: BarPlan,
  onset: number,
  meter: MeterTicks,
): void {
  const first = (columns.starts[bar] ?? 0) + candidate.padding;
  const end = columns.ends[bar] ?? 0;
  const positions: number[] = [];
  for (let i = columns.firstOnset[bar] ?? 0; i < (columns.firstOnset[bar + 1] ?? 0); i++) {
    const seconds = candidate.skipDigits ? (columns.onsetSeconds[i] ?? 0) : 0;
    positions.push((columns.onsetOffsets[i] ?? 0) - candidate.padding - seconds);
  }
  const from = meter.perBar - plan.length;
  const snapped = snapOnsets(positions, plan.columns, from, meter.perBar, snapGrid(meter));
  const pins =
    snapped === undefined
      ? []
      : positions.map((position, i) => ({ position, tick: (snapped[i] ?? 0) - from }));
  // A bar of padding alone (one or two columns, no note) still ends.
  pins.push({ position: Math.max(1, plan.columns), tick: plan.length });
  let pin = { position: 0, tick: 0 };
  let next = 0;
  let position = 0;
  for (let column = times.length; column < end; column++) {
    while ((pins[next]?.position ?? Infinity) <= position) pin = pins[next++] ?? pin;
    const to = pins[next] ?? pin;
    const span = Math.max(1, to.position - pin.position);
    const ticks = (onset + pin.tick) * span + (to.tick - pin.tick) * (position - pin.position);
    times.push(fraction(ticks, meter.perQuarter * span));
    if (column >= first && !(candidate.skipDigits && columns.isSecond[column] === 1)) position++;
  }
}
