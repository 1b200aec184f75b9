import { equal, subtract, toNumber, ZERO, type Fraction } from '../../music/fraction';
import { parseLine } from '../../notation/parseLine';
import { setUnder } from '../../notation/print/rewriteSystem';
import { readSystem } from '../../notation/systemReading';
import { writeCount, type CountedBar, type CountedOnset } from '../../notation/time/writeCount';
import type { Laying } from './layIn';

/** Something that stands on a string at a time. */
interface Event {
  readonly string: number;
  readonly onset: Fraction;
  readonly stops: boolean;
}

/**
 * Lines, signs put in, under a count row that gives every sign its time; a count row that they have is replaced.
 * Undefined where no count says it.
 */
export function countedLines(lines: readonly string[], laying: Laying): string[] | undefined {
  const plain = lines.filter((line) => {
    const parsed = parseLine(line);
    return !(parsed.kind === 'row' && parsed.row === 'count');
  });
  const reading = readSystem(plain.map(parseLine), laying.header, laying.position);
  if (reading.bars.length !== laying.bars.length) return undefined;
  const bars = laying.bars.map(({ onset, length, pickup }, i): CountedBar => {
    const { startColumn = 0, endColumn = 0 } = reading.bars[i] ?? {};
    return { start: startColumn, end: endColumn, onset, length, pickup };
  });
  const found = [
    ...reading.notes.map((note) => ({
      string: note.string,
      stops: false,
      column: note.column,
      end: note.column + note.numberEnd - note.numberStart - 1,
    })),
    ...reading.stops.map(({ string, column }) => ({ string, stops: true, column, end: column })),
  ].sort((a, b) => a.column - b.column);
  const wanted = eventsOf(laying);
  if (found.length !== wanted.length) return undefined;
  const pins = new Map<number, CountedOnset>();
  for (const event of wanted) {
    // Along one string signs stand in the order of their times.
    const at = found.findIndex((one) => one.string === event.string && one.stops === event.stops);
    const [sign] = at < 0 ? [] : found.splice(at, 1);
    if (!sign) return undefined;
    const bar = Math.max(
      0,
      bars.findIndex(({ end }) => sign.column < end),
    );
    const time = subtract(event.onset, bars[bar]?.onset ?? ZERO);
    const known = pins.get(sign.column);
    if (known && !equal(known.time, time)) return undefined;
    pins.set(sign.column, {
      column: sign.column,
      time,
      bar,
      end: Math.max(known?.end ?? 0, sign.end),
    });
  }
  const body = writeCount(laying.header.meter, bars, [...pins.values()]);
  return body === undefined ? undefined : setUnder('count', body, plain);
}

function eventsOf({ before, puts }: Laying): Event[] {
  const there = before
    ? [
        ...before.notes.map(({ string, onset }) => ({ string, onset, stops: false })),
        ...before.stops.map(({ string, onset }) => ({ string, onset, stops: true })),
      ]
    : [];
  const own = puts.map(({ string, onset, text }) => ({ string, onset, stops: text === '.' }));
  return [...there, ...own].sort((a, b) => toNumber(a.onset) - toNumber(b.onset));
}
