import type { TimeInput } from './timeInput';

/** A system's columns, counted once for all candidate readings. */
export interface Columns {
  readonly width: number;
  readonly bars: number;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** Columns of second digits in each bar. */
  readonly barSeconds: Int32Array;
  readonly hasSecondDigits: boolean;
  /** 1 for each column of second digits. */
  readonly isSecond: Uint8Array;
  /** Columns of the onsets that stand in a bar. */
  readonly onsetColumns: readonly number[];
  /** Index of each bar's first onset; one entry more, the number of onsets. */
  readonly firstOnset: Int32Array;
  /** Columns of each onset from its bar's first. */
  readonly onsetOffsets: Int32Array;
  /** Columns of second digits in its bar before each onset. */
  readonly onsetSeconds: Int32Array;
  /** The least of `onsetOffsets`; Infinity without an onset. */
  readonly leastOffset: number;
}

export function measureColumns(input: TimeInput): Columns {
  const bars = input.bars.length;
  const lastEnd = input.bars[bars - 1]?.end ?? 0;
  const width = Math.max(input.width ?? 0, lastEnd);
  const starts = new Int32Array(bars);
  const ends = new Int32Array(bars);
  const barSeconds = new Int32Array(bars);
  const isSecond = new Uint8Array(width + 1);
  for (const column of input.secondDigits) isSecond[column] = 1;
  const firstOnset = new Int32Array(bars + 1);
  const onsetColumns: number[] = [];
  const onsetOffsets = new Int32Array(input.onsets.length);
  const onsetSeconds = new Int32Array(input.onsets.length);
  let leastOffset = Infinity;
  let hasSecondDigits = false;
  let next = 0;
  for (let bar = 0; bar < bars; bar++) {
    const { start, end } = input.bars[bar] ?? { start: 0, end: 0 };
    starts[bar] = start;
    ends[bar] = end;
    firstOnset[bar] = onsetColumns.length;
    while ((input.onsets[next] ?? Infinity) < start) next++;
    let seconds = 0;
    for (let column = start; column < end; column++) {
      if (input.onsets[next] === column) {
        leastOffset = Math.min(leastOffset, column - start);
        onsetOffsets[onsetColumns.length] = column - start;
        onsetSeconds[onsetColumns.length] = seconds;
        onsetColumns.push(column);
        next++;
      }
      seconds += isSecond[column] ?? 0;
    }
    barSeconds[bar] = seconds;
    if (seconds > 0) hasSecondDigits = true;
  }
  firstOnset[bars] = onsetColumns.length;
  return {
    width,
    bars,
    starts,
    ends,
    barSeconds,
    hasSecondDigits,
    isSecond,
    onsetColumns,
    firstOnset,
    onsetOffsets,
    onsetSeconds,
    leastOffset,
  };
}
