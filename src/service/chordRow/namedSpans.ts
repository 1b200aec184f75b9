import { add, compare, fraction, multiply, subtract, toNumber, type Fraction } from '../../music/fraction';
import { barLength } from '../../music/meter';
import type { BarReading } from '../../notation/reading';
import { beatsOf } from '../start/layout';
import { nameBetween, soundsBetween, type Ear } from './spanName';

/** A stretch of a bar with its name; undefined where what sounds has none. */
export interface NamedSpan {
  readonly from: Fraction;
  readonly to: Fraction;
  readonly name: string | undefined;
}

/** What one more name in a bar must win, in costs of names: a sixth chord (5) is two triads where both are there. */
const CHANGE = 2.5;
/** What a quarter note without a name costs, so that a chord with a long name is still named. */
const UNNAMED = 8;

/** The beats of a bar that lie between two times, both ends included. A short first bar counts from its end. */
export function beatsBetween(ear: Ear, bar: BarReading, from: Fraction, to: Fraction): readonly Fraction[] {
  const { meter } = ear.system.header;
  const beat = multiply(barLength(meter), fraction(1, beatsOf(meter)));
  const times: Fraction[] = [to];
  for (
    let time = subtract(add(bar.onset, bar.length), beat);
    compare(time, from) > 0;
    time = subtract(time, beat)
  )
    if (compare(time, to) < 0) times.unshift(time);
  return [from, ...times];
}

/**
 * Divides a stretch of one bar at its beats so that the names are as plain and as few as can be.
 */
export function namedSpans(ear: Ear, bar: BarReading, from: Fraction, to: Fraction): readonly NamedSpan[] {
  const times = beatsBetween(ear, bar, from, to);
  const best: { cost: number; spans: readonly NamedSpan[] }[] = [{ cost: 0, spans: [] }];
  for (let end = 1; end < times.length; end++) {
    for (let start = 0; start < end; start++) {
      const [before, begin, finish] = [best[start], times[start], times[end]];
      if (!before || !begin || !finish) continue;
      const { name, cost } = judged(ear, begin, finish);
      const sum = before.cost + cost;
      if (sum < (best[end]?.cost ?? Infinity))
        best[end] = { cost: sum, spans: [...before.spans, { from: begin, to: finish, name }] };
    }
  }
  return best.at(-1)?.spans ?? [];
}

function judged(ear: Ear, from: Fraction, to: Fraction): { name: string | undefined; cost: number } {
  const found = nameBetween(ear, from, to);
  if (found) return { name: found.name, cost: found.cost + CHANGE };
  const silent = !soundsBetween(ear, from, to);
  return { name: undefined, cost: silent ? 0 : UNNAMED * toNumber(subtract(to, from)) };
}
