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
}

const BAR = /\|{1,2}|‖/g;

/** Cuts the lines of a system at their bar signs, which all lines are to have. */
export function cutRuns(given: readonly string[]): CutRuns {
  // Dots behind the last sign begin no bar; they are for what follows.
  const opensNext = given.some((run) => /[|‖]:$/.test(run));
  const runs = given.map((run) => run.replace(/([|‖]):$/, '$1'));
  const signs = runs.map(signsOf);
  const counts = new Set(runs.map((run, i) => barCount(run, signs[i] ?? [])));
  const drawn = runs.some((run) => run.includes('‖'));
  const cut = counts.size === 1 ? inOrder(runs, signs) : byColumn(runs, signs);
  const dotted = withDots(cut);
  const shared = Math.min(...signs.map((list) => list.length));
  const places = new Set(
    signs.map((list) =>
      list
        .slice(0, shared)
        .map(({ start }) => start)
        .join(' '),
    ),
  );
  const crooked = counts.size > 1 ? signs.some((list) => list.length > 1) : places.size > 1;
  const last = dotted.signs.length - 1;
  return {
    bars: dotted.bars,
    signs: dotted.signs.map((sign, k) => (opensNext && k === last ? `${sign}:` : sign)),
    unusual: drawn || crooked || dotted.unusual,
    crooked,
  };
}

function signsOf(run: string): Sign[] {
  return [...run.matchAll(BAR)].map(({ 0: text, index }) => ({
    start: index,
    end: index + text.length,
    double: text !== '|',
  }));
}

function barCount(run: string, signs: readonly Sign[]): number {
  const last = signs.at(-1);
  return signs.length - (last && signs.length > 1 && last.end >= run.length ? 1 : 0);
}

interface Cut {
  readonly bars: readonly (readonly Segment[])[];
  readonly signs: readonly string[];
}

/** Every line has as many bars: the first goes with the first, wherever their signs stand. */
function inOrder(runs: readonly string[], signs: readonly (readonly Sign[])[]): Cut {
  const most = Math.max(...signs.map((list) => list.length));
  const count = Math.max(...runs.map((run, i) => barCount(run, signs[i] ?? [])));
  const bars: Segment[][] = [];
  const written: string[] = [];
  for (let k = 0; k < most; k++) {
    written.push(signText(signs.flatMap((list) => list[k] ?? [])));
    if (k >= count) continue;
    bars.push(
      runs.map((run, i) => {
        const column = signs[i]?.[k]?.end ?? run.length;
        return { text: run.slice(column, signs[i]?.[k + 1]?.start), column };
      }),
    );
  }
  if (written.length === count) written.push('|');
  return { bars, signs: written };
}

function signText(here: readonly Sign[]): string {
  return here.filter((sign) => sign.double).length * 2 > here.length ? '||' : '|';
}

/** Some lines miss a sign: bars are where most lines have one. */
function byColumn(runs: readonly string[], signs: readonly (readonly Sign[])[]): Cut {
  const votes = new Map<number, Sign[]>();
  for (const sign of signs.flat()) votes.set(sign.start, [...(votes.get(sign.start) ?? []), sign]);
  const lengths = runs.map((run) => run.length);
  const columns = [...votes]
    .filter(([column, list]) => list.length * 2 >= lengths.filter((length) => length > column).length)
    .sort(([a], [b]) => a - b);
  const bars: Segment[][] = [];
  const written: string[] = [];
  columns.forEach(([column, list], k) => {
    written.push(signText(list));
    const start = column + widthOf(list);
    const [end = Math.max(...lengths), nextSigns = []] = columns[k + 1] ?? [];
    if (!columns[k + 1] && !lengths.some((length) => length > start)) return;
    bars.push(
      runs.map((run) => {
        const behind = run.slice(end, end + widthOf(nextSigns));
        // What stands in the way of a bar line that the others have goes before it.
        const kept = /[^-—_ |:‖]/.test(behind) ? behind : '';
        return { text: (run.slice(start, end) + kept).replace(BAR, dashes), column: start };
      }),
    );
  });
  if (written.length === bars.length) written.push('|');
  return { bars, signs: written };
}

function widthOf(list: readonly Sign[]): number {
  return list.length === 0 ? 0 : Math.min(...list.map(({ start, end }) => end - start));
}

function dashes(text: string): string {
  return '-'.repeat(text.length);
}

interface Dotted extends Cut {
  readonly unusual: boolean;
}

/** Colons, stars or small o's beside a sign, on all lines or on some, are the dots of a repeat. */
function withDots({ bars, signs }: Cut): Dotted {
  const written = [...signs];
  let unusual = false;
  const cleared = bars.map((bar, k) => {
    const opening = dotted(bar, 0, 1);
    const closing = dotted(bar, -1, -2);
    if (opening) written[k] = `${written[k] ?? '|'}:`;
    if (closing) written[k + 1] = `:${written[k + 1] ?? '|'}`;
    unusual ||= opening === 'unusual' || closing === 'unusual';
    const opened = opening ? withoutDots(bar, 0) : bar;
    return closing ? withoutDots(opened, -1) : opened;
  });
  return { bars: cleared, signs: written, unusual };
}

const DOT = /^[*o:•]$/;

/** Whether dots stand there: on some lines at least, and not where they can only belong to a note. */
function dotted(bar: readonly Segment[], at: number, beside: number): 'usual' | 'unusual' | undefined {
  const dots = bar.filter(({ text }) => DOT.test(text.at(at) ?? ''));
  if (dots.some(({ text }) => text.at(at) === ':')) return dots.length === bar.length ? 'usual' : 'unusual';
  if (dots.length < 2 || (dots.length === bar.length && bar.length > 2)) return undefined;
  return dots.some(({ text }) => !/\d/.test(text.at(beside) ?? '')) ? 'unusual' : undefined;
}

/** The dots belong to the sign: their column goes, unless a note stands there on another line. */
function withoutDots(bar: readonly Segment[], at: 0 | -1): Segment[] {
  const free = bar.every(({ text }) => /^[-—_ *o:•]?$/.test(text.at(at) ?? ''));
  return bar.map(({ text, column }) => {
    if (free)
      return at === 0 ? { text: text.slice(1), column: column + 1 } : { text: text.slice(0, -1), column };
    if (!DOT.test(text.at(at) ?? '')) return { text, column };
    return { text: at === 0 ? `-${text.slice(1)}` : `${text.slice(0, -1)}-`, column };
  });
}
