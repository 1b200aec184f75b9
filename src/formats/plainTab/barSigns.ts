/** A run cut at its bar signs. */
export interface CutRuns {
  /** For each bar, what each line holds between its signs; empty where a line has ended. */
  readonly bars: readonly (readonly Segment[])[];
  /** The sign before each bar, and the one behind the last; empty where none is. */
  readonly signs: readonly string[];
  /** Whether signs of another habit, or in other places from line to line, had to be understood. */
  readonly unusual: boolean;
  /** Whether bar signs do not stand under each other. */
  readonly crooked: boolean;
}

/** What stands on one line between two bar signs. */
export interface Segment {
  readonly text: string;
  /** Columns from the start of the run. */
  readonly column: number;
}

interface Sign {
  readonly start: number;
  readonly end: number;
  readonly double: boolean;
  readonly closes: boolean;
  readonly opens: boolean;
}

const BAR = /:?(?:\|{1,2}|‖):?/g;

/** Cuts the lines of a system at their bar signs, which all lines are to have. */
export function cutRuns(runs: readonly string[]): CutRuns {
  const signs = runs.map(signsOf);
  const counts = new Set(runs.map((run, i) => barCount(run, signs[i] ?? [])));
  const drawn = runs.some((run) => run.includes('‖'));
  const cut = counts.size === 1 ? inOrder(runs, signs) : byColumn(runs, signs);
  const dotted = withDots(cut.bars, cut.signs);
  const shared = Math.min(...signs.map((list) => list.length));
  const places = new Set(signs.map((list) => list.slice(0, shared).map(columnOf).join(' ')));
  const crooked = counts.size > 1 ? signs.some((list) => list.length > 1) : places.size > 1;
  return { ...dotted, unusual: drawn || crooked || dotted.unusual, crooked };
}

function signsOf(run: string): Sign[] {
  return [...run.matchAll(BAR)].map(({ 0: text, index }) => ({
    start: index,
    end: index + text.length,
    double: text.includes('||') || text.includes('‖'),
    closes: text.startsWith(':'),
    opens: text.endsWith(':'),
  }));
}

function barCount(run: string, signs: readonly Sign[]): number {
  const last = signs.at(-1);
  return signs.length - (last && signs.length > 1 && last.end >= run.length ? 1 : 0);
}

/** Where its bar line stands, dots apart. */
function columnOf({ start, closes }: Sign): number {
  return start + (closes ? 1 : 0);
}

interface Cut {
  readonly bars: Segment[][];
  readonly signs: string[];
}

/** Every line has as many bars: the first goes with the first, wherever their signs stand. */
function inOrder(runs: readonly string[], signs: readonly (readonly Sign[])[]): Cut {
  const most = Math.max(...signs.map((list) => list.length));
  const count = Math.max(...runs.map((run, i) => barCount(run, signs[i] ?? [])));
  const bars: Segment[][] = [];
  const written: string[] = [];
  for (let k = 0; k < most; k++) {
    const here = signs.flatMap((list) => list[k] ?? []);
    const opens = here.every((sign) => sign.opens);
    const closes = here.every((sign) => sign.closes);
    written.push(signText(here, closes, opens));
    if (k < count) bars.push(runs.map((run, i) => segment(run, signs[i] ?? [], k, runs.length)));
  }
  if (written.length === count) written.push('|');
  return { bars, signs: written };

  function segment(run: string, list: readonly Sign[], k: number, lines: number): Segment {
    const from = list[k];
    const to = list[k + 1];
    if (!from) return { text: '', column: run.length };
    const all = (at: number, which: 'opens' | 'closes'): boolean =>
      signs.flatMap((other) => other[at] ?? []).filter((sign) => sign[which]).length === lines;
    // A dot that not every line has takes a column of the bar.
    const start = from.opens && !all(k, 'opens') ? from.end - 1 : from.end;
    const end = to ? to.start + (to.closes && !all(k + 1, 'closes') ? 1 : 0) : run.length;
    return { text: run.slice(start, end), column: start };
  }
}

function signText(here: readonly Sign[], closes: boolean, opens: boolean): string {
  const double = here.filter((sign) => sign.double).length * 2 > here.length;
  return `${closes ? ':' : ''}${double ? '||' : '|'}${opens ? ':' : ''}`;
}

/** Some lines miss a sign: bars are where most lines have one. */
function byColumn(runs: readonly string[], signs: readonly (readonly Sign[])[]): Cut {
  const votes = new Map<number, Sign[]>();
  for (const list of signs) {
    for (const sign of list) {
      const column = columnOf(sign);
      votes.set(column, [...(votes.get(column) ?? []), sign]);
    }
  }
  const lengths = runs.map((run) => run.length);
  const columns = [...votes]
    .filter(([column, list]) => list.length * 2 >= lengths.filter((length) => length > column).length)
    .sort(([a], [b]) => a - b);
  const bars: Segment[][] = [];
  const written: string[] = [];
  columns.forEach(([column, list], k) => {
    const opens = list.every((sign) => sign.opens);
    const closes = list.every((sign) => sign.closes);
    written.push(signText(list, closes, opens));
    const start = column + widthOf(list, opens);
    const next = columns[k + 1];
    if (!next && !lengths.some((length) => length > start)) return;
    const end = next ? next[0] - (next[1].every((sign) => sign.closes) ? 1 : 0) : Math.max(...lengths);
    const over = next ? widthOf(next[1], false) : 0;
    bars.push(
      runs.map((run) => {
        const behind = run.slice(end, end + over);
        // What stands in the way of a bar line that the others have goes before it.
        const kept = /[^-—_ |:‖]/.test(behind) ? behind : '';
        return { text: (run.slice(start, end) + kept).replace(BAR, dashes), column: start };
      }),
    );
  });
  if (written.length === bars.length) written.push('|');
  return { bars, signs: written };
}

/** Columns of a bar sign, its dots where all lines have them. */
function widthOf(list: readonly Sign[], opens: boolean): number {
  return Math.min(...list.map((sign) => sign.end - columnOf(sign) - (sign.opens ? 1 : 0))) + (opens ? 1 : 0);
}

function dashes(text: string): string {
  return '-'.repeat(text.length);
}

/** Stars, small o's or colons on some lines beside a sign are the dots of a repeat. */
function withDots(bars: readonly (readonly Segment[])[], signs: readonly string[]): Omit<CutRuns, 'crooked'> {
  const written = [...signs];
  let unusual = false;
  const cleared = bars.map((bar, k) => {
    const opening = dotted(
      bar,
      ({ text }) => text.charAt(0),
      ({ text }) => text.charAt(1),
    );
    const closing = dotted(
      bar,
      ({ text }) => text.charAt(text.length - 1),
      ({ text }) => text.charAt(text.length - 2),
    );
    if (opening) written[k] = `${(written[k] ?? '|').replace(/:$/, '')}:`;
    if (closing) written[k + 1] = `:${(written[k + 1] ?? '|').replace(/^:/, '')}`;
    unusual ||= opening || closing;
    return bar.map(({ text, column }) => {
      let plain = text;
      if (opening && DOT.test(plain.charAt(0))) plain = `-${plain.slice(1)}`;
      if (closing && DOT.test(plain.charAt(plain.length - 1))) plain = `${plain.slice(0, -1)}-`;
      return { text: plain, column };
    });
  });
  return { bars: cleared, signs: written, unusual };
}

const DOT = /[*o:•]/;

/** At least two lines have a dot there, not all of them, and one of the dots cannot belong to a note. */
function dotted(
  bar: readonly Segment[],
  dot: (segment: Segment) => string,
  beside: (segment: Segment) => string,
): boolean {
  const lines = bar.filter((segment) => DOT.test(dot(segment)));
  if (lines.length === 0 || (lines.length === bar.length && bar.length > 2)) return false;
  if (lines.some((segment) => dot(segment) === ':')) return true;
  return lines.length >= 2 && lines.some((segment) => !/\d/.test(beside(segment)));
}
