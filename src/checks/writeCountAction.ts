import { subtract } from '../music/fraction';
import type { System } from '../notation/tabDocument';
import { writeCount } from '../notation/time/writeCount';
import type { Mend } from './check';
import { lastFirst, replace } from './support/edits';

/**
 * Writes the rhythm that was worked out from the columns as a `count` row above the strings; what is written reads back
 * as the very same times.
 * @returns undefined where a count row says the times already, where there are no notes, or where no row can say them.
 */
export function writeCountAction(system: System): Mend | undefined {
  const { reading, header, lines, firstLine } = system;
  if (reading.timing === 'counted' || reading.notes.length === 0) return undefined;
  if (reading.rows.some(({ row }) => row === 'count')) return undefined;
  const bars = reading.bars.map((bar) => ({ ...bar, start: bar.startColumn, end: bar.endColumn }));
  const columns = new Map<number, { bar: number; time: ReturnType<typeof subtract> }>();
  for (const { column, onset } of [...reading.notes, ...reading.stops]) {
    const bar = Math.max(
      0,
      bars.findIndex(({ end }) => column < end),
    );
    const begin = bars[bar]?.onset;
    if (begin) columns.set(column, { bar, time: subtract(onset, begin) });
  }
  const body = writeCount(
    header.meter,
    bars,
    [...columns].map(([column, { bar, time }]) => ({ column, bar, time })),
  );
  const top = lines.findIndex((line) => line.kind === 'string');
  const string = lines[top];
  if (body === undefined || string?.kind !== 'string') return undefined;
  const { start } = string.label;
  const room = string.bodyStart - start;
  const more = Math.max(0, 'count '.length - room);
  const row = ' '.repeat(start) + 'count '.padEnd(room + more) + body;
  const edits = lines.flatMap((line, i) => {
    if (line.kind !== 'string' && line.kind !== 'row') return [];
    return more === 0 ? [] : [replace(firstLine + i, line.bodyStart, line.bodyStart, ' '.repeat(more))];
  });
  return {
    title: 'Write the count that was worked out',
    preferred: false,
    edits: lastFirst([...edits, replace(firstLine + top, 0, 0, `${row}\n`)]),
  };
}
