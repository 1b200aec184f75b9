import { closesRepeat, opensRepeat } from '../../notation/bars';
import type { Bar } from './barList';

/** Repeat signs of some bars that have no counterpart among them. */
export interface LooseSigns {
  /** Indexes of bars whose opening sign is closed by none of the bars behind it. */
  readonly opens: ReadonlySet<number>;
  /** Indexes of bars whose closing sign no bar before it opened. */
  readonly closes: ReadonlySet<number>;
}

/**
 * Finds the repeat signs whose other half stands outside some bars in a row.
 * @example looseSigns([{ ...bar, open: '|:', close: '|' }]).opens // Set { 0 }
 */
export function looseSigns(bars: readonly Pick<Bar, 'open' | 'close'>[]): LooseSigns {
  const opens: number[] = [];
  const closes = new Set<number>();
  for (const [i, { open, close }] of bars.entries()) {
    if (opensRepeat(open)) opens.push(i);
    if (closesRepeat(close) && opens.pop() === undefined) closes.add(i);
  }
  return { opens: new Set(opens), closes };
}

/** Bars without the loose signs that open, or close, a repeat. */
export function withoutLoose(bars: readonly Bar[], side: 'open' | 'close' | 'both'): Bar[] {
  const { opens, closes } = looseSigns(bars);
  return bars.map((bar, i) => ({
    ...bar,
    open: side !== 'close' && opens.has(i) ? '|' : bar.open,
    close: side !== 'open' && closes.has(i) ? '|' : bar.close,
  }));
}

/**
 * Bars that stand where others stood, with the loose repeat signs of those at their ends. Where no bar takes their
 * place, the signs go to the neighbours.
 */
export function inPlaceOf(
  gone: readonly Bar[],
  before: readonly Bar[],
  fresh: readonly Bar[],
  after: readonly Bar[],
): Bar[] {
  const { opens, closes } = looseSigns(gone);
  const opened = gone.find((_, i) => opens.has(i))?.open;
  const closed = gone.find((_, i) => closes.has(i))?.close;
  const all = [...before, ...withoutLoose(fresh, 'both'), ...after];
  const first = before.length;
  const last = before.length + fresh.length - 1;
  return all.map((bar, i) => ({
    ...bar,
    open: i === first && opened !== undefined ? opened : bar.open,
    close: i === last && closed !== undefined ? closed : bar.close,
  }));
}
