import { LOWER_NOTE, type MeterTicks } from './ticks';

/** The two grids that onsets of an uneven bar snap to, as ticks between points; `triplet` is 0 where there is none. */
export interface SnapGrid {
  readonly sixteenth: number;
  readonly triplet: number;
}

/**
 * Sixteenth notes, or halves of the lower note where that is shorter, and thirds of the quarter note, or of the lower
 * note where that is shorter. Dotted beats have no triplets: their thirds are the lower notes.
 */
export function snapGrid(meter: MeterTicks): SnapGrid {
  return {
    sixteenth: Math.min(meter.perQuarter / 4, LOWER_NOTE / 2),
    triplet: meter.compound ? 0 : Math.min(meter.perQuarter, LOWER_NOTE) / 3,
  };
}

/**
 * Moves onsets of a bar to the nearest points of the grid, the sixteenth of two as near. Where two would join, all go
 * where the least movement in all keeps them apart; a bar with more onsets than points keeps its columns' times.
 * @param positions ascending, distinct, in columns of `columns` from where the bar begins.
 * @param from first tick of the bar in the full bar (0, or where a pickup begins).
 * @param to tick at which the bar ends.
 * @returns ticks in the full bar, strictly ascending, or undefined when the bar keeps its columns' times.
 */
export function snapOnsets(
  positions: readonly number[],
  columns: number,
  from: number,
  to: number,
  grid: SnapGrid,
): readonly number[] | undefined {
  const raw = positions.map((position) => from + (position * (to - from)) / columns);
  const nearest: number[] = [];
  for (const tick of raw) {
    const point = nearestPoint(tick, from, to, grid);
    if (point <= (nearest.at(-1) ?? from - 1)) return spread(raw, from, to, grid);
    nearest.push(point);
  }
  return nearest;
}

function nearestPoint(tick: number, from: number, to: number, grid: SnapGrid): number {
  const sixteenth = nearestMultiple(tick, grid.sixteenth, from, to);
  if (grid.triplet === 0) return sixteenth;
  const triplet = nearestMultiple(tick, grid.triplet, from, to);
  return Math.abs(triplet - tick) < Math.abs(sixteenth - tick) ? triplet : sixteenth;
}

function nearestMultiple(tick: number, step: number, from: number, to: number): number {
  const multiple = Math.round(tick / step) * step;
  return multiple < from ? multiple + step : multiple >= to ? multiple - step : multiple;
}

/** The strictly ascending choice of points with the least total movement; undefined when there are too few points. */
function spread(
  raw: readonly number[],
  from: number,
  to: number,
  grid: SnapGrid,
): readonly number[] | undefined {
  const points: number[] = [];
  for (let tick = from; tick < to; tick++) {
    if (tick % grid.sixteenth === 0 || (grid.triplet > 0 && tick % grid.triplet === 0)) points.push(tick);
  }
  if (points.length < raw.length) return undefined;
  // least[i][j]: the least movement of the first i onsets within the first j points.
  const least = [new Array<number>(points.length + 1).fill(0)];
  raw.forEach((tick, i) => {
    const before = least[i] ?? [];
    const row = [Infinity];
    points.forEach((point, j) => {
      row.push(Math.min(row[j] ?? Infinity, (before[j] ?? Infinity) + Math.abs(point - tick)));
    });
    least.push(row);
  });
  const chosen: number[] = [];
  let j = points.length;
  for (let i = raw.length; i > 0; i--) {
    while (j > 1 && least[i]?.[j] === least[i]?.[j - 1]) j--;
    j--;
    chosen.unshift(points[j] ?? from);
  }
  return chosen;
}
