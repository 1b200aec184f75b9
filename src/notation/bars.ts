import type { Problem } from './reading';

/** A bar sign of one line: `key` is the column of its first bar line, the column that must agree between lines. */
export interface LineSign {
  readonly text: string;
  readonly column: number;
  readonly width: number;
  readonly start: number;
  readonly end: number;
}

/** A line of a system as far as its bars go: a string line, or a row. */
export interface BarLine {
  /** Index in the system. */
  readonly line: number;
  readonly width: number;
  readonly signs: readonly LineSign[];
  /** The column past its last note or other sign of a cell. */
  readonly contentEnd: number;
}

/** A bar sign of the whole system. */
export interface SystemSign {
  /** The most telling way any line writes it. */
  readonly text: string;
  /** First and last column that any line gives to it. */
  readonly first: number;
  readonly last: number;
}

export interface BarsReading {
  readonly signs: readonly SystemSign[];
  /** Columns between the signs; `end` is exclusive. */
  readonly bars: readonly {
    readonly start: number;
    readonly end: number;
    readonly opens: number;
    readonly closes: number | undefined;
  }[];
  readonly width: number;
  readonly problems: readonly Problem[];
}

/**
 * The bars of a system. Where lines disagree about a sign most of them decide, then the top one; each line that
 * disagrees is told.
 */
export function readBars(lines: readonly BarLine[]): BarsReading {
  const width = Math.max(0, ...lines.map((line) => line.width));
  const voters = lines.filter((line) => line.width > (line.signs[0]?.width ?? 0));
  const agreed = voters.length === lines.length ? agreedSigns(lines) : undefined;
  if (agreed) return { signs: agreed, bars: barsBetween(agreed, width), width, problems: [] };
  const [top] = voters.length > 0 ? voters : lines;
  const votes = new Map<number, LineSign[]>();
  for (const line of voters.length > 0 ? voters : lines) {
    for (const sign of line.signs) {
      const key = keyOf(sign);
      const list = votes.get(key);
      if (list) list.push(sign);
      else votes.set(key, [sign]);
    }
  }
  const chosen = new Map<number, SystemSign>();
  for (const [key, signs] of votes) {
    const share = signs.length * 2 - (voters.length || 1);
    const topHasIt = top?.signs.some((sign) => keyOf(sign) === key) ?? false;
    if (share > 0 || (share === 0 && topHasIt) || key === 0) chosen.set(key, merge(signs));
  }
  for (const [key, sign] of onePlaceEach(voters, votes, chosen)) chosen.set(key, sign);
  const signs = [...chosen.values()].sort((a, b) => a.first - b.first);
  const ends = lines.map((line) => endOf(line, chosen, signs.at(-1)));
  return {
    signs,
    bars: barsBetween(signs, Math.max(0, ...ends)),
    width,
    problems: disagreements(voters, chosen),
  };
}

/**
 * Where all lines write as many signs, and so surely mean the same ones, yet no place of some sign has half of the lines:
 * the place that has most of them, of equals the top line's.
 */
function onePlaceEach(
  voters: readonly BarLine[],
  votes: ReadonlyMap<number, readonly LineSign[]>,
  chosen: ReadonlyMap<number, SystemSign>,
): Map<number, SystemSign> {
  const found = new Map<number, SystemSign>();
  const count = voters[0]?.signs.length ?? 0;
  if (chosen.size >= count || voters.some(({ signs }) => signs.length !== count)) return found;
  const own = voters.map(({ signs }) => signs.map(keyOf));
  const places: number[] = [];
  for (let i = 0; i < count; i++) {
    const keys = own.map((line) => line[i] ?? 0);
    const times = (key: number): number => keys.filter((other) => other === key).length;
    const best =
      keys.find((key) => chosen.has(key)) ??
      keys.reduce((most, key) => (times(key) > times(most) ? key : most), keys[0] ?? 0);
    // Places that cross are no reading of the same signs.
    if (best <= (places.at(-1) ?? -1)) return found;
    places.push(best);
  }
  for (const key of places) if (!chosen.has(key)) found.set(key, merge(votes.get(key) ?? []));
  return found;
}

/**
 * Where a line's bars end. One that is longer only because its last sign is out of line, and that writes no more signs
 * than all have, means no further bar; unless something stands there to be played.
 */
function endOf(line: BarLine, chosen: ReadonlyMap<number, SystemSign>, last: SystemSign | undefined): number {
  const sign = line.signs.at(-1);
  if (!last || !sign || line.signs.length > chosen.size || line.contentEnd > last.last + 1) return line.width;
  const isStray = !chosen.has(keyOf(sign)) && sign.column + sign.width === line.width;
  return isStray ? Math.min(line.width, last.last + 1) : line.width;
}

/** The signs when all lines write the same ones, as nearly all systems do: then there is nothing to vote on. */
function agreedSigns([top, ...others]: readonly BarLine[]): readonly SystemSign[] | undefined {
  if (!top) return undefined;
  for (const { signs } of others) {
    if (signs.length !== top.signs.length) return undefined;
    for (let i = 0; i < signs.length; i++) {
      if (signs[i]?.column !== top.signs[i]?.column || signs[i]?.text !== top.signs[i]?.text)
        return undefined;
    }
  }
  return top.signs.map(({ text, column, width }) => ({ text, first: column, last: column + width - 1 }));
}

/** The column of a sign's first bar line. */
export function keyOf(sign: { readonly text: string; readonly column: number }): number {
  return sign.column + (sign.text.startsWith(':') ? 1 : 0);
}

function merge(signs: readonly LineSign[]): SystemSign {
  const text = signs
    .map((sign) => sign.text)
    .reduce((best, next) => (next.length > best.length ? next : best));
  return {
    text,
    first: Math.min(...signs.map((sign) => sign.column)),
    last: Math.max(...signs.map((sign) => sign.column + sign.width - 1)),
  };
}

function barsBetween(signs: readonly SystemSign[], width: number): BarsReading['bars'] {
  const bars = [];
  for (let i = 0; i < signs.length; i++) {
    const start = (signs[i]?.last ?? -1) + 1;
    const next = signs[i + 1];
    const end = next?.first ?? width;
    if (end > start) bars.push({ start, end, opens: i, closes: next ? i + 1 : undefined });
  }
  return bars;
}

function disagreements(lines: readonly BarLine[], chosen: ReadonlyMap<number, SystemSign>): Problem[] {
  const problems: Problem[] = [];
  const keys = [...chosen.keys()].sort((a, b) => a - b);
  for (const line of lines) {
    const own = line.signs.map(keyOf);
    const strays = line.signs.filter((sign) => !chosen.has(keyOf(sign)));
    const missing = keys.filter((key) => key < line.width && !own.includes(key));
    const [first] = strays;
    if (first) {
      problems.push({
        kind: 'bar-out-of-line',
        line: line.line,
        start: first.start,
        end: first.end,
        facts: {
          column: keyOf(first),
          expected: nearest(keys, keyOf(first)),
          strays: strays.map(keyOf),
          missing,
          keys,
        },
      });
    } else if (missing.length > 0) {
      const last = line.signs.at(-1);
      problems.push({
        kind: 'bar-missing',
        line: line.line,
        start: last?.start ?? 0,
        end: last?.end ?? 0,
        facts: { column: missing[0] ?? 0, missing, keys },
      });
    }
  }
  return problems;
}

function nearest(keys: readonly number[], key: number): number {
  return keys.reduce(
    (best, next) => (Math.abs(next - key) < Math.abs(best - key) ? next : best),
    keys[0] ?? key,
  );
}

/** Whether a bar sign opens a repeated passage: `|:` `||:` `:|:`. */
export function opensRepeat(sign: string): boolean {
  return sign.endsWith(':');
}

/** Whether a bar sign closes one: `:|` `:||` `:|:`. */
export function closesRepeat(sign: string): boolean {
  return sign.startsWith(':');
}
