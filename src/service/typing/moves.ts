import { fraction, subtract } from '../../music/fraction';
import { meterTicks } from '../../notation/time/ticks';
import type { StringLine } from '../../notation/parsedLine';
import type { System, TabDocument } from '../../notation/tabDocument';
import type { Place } from '../records';
import { columnOf, offsetOf } from './stringCell';

/** Where a cursor can be taken on a staff. A cell is a note with its signs; a string is the line above or below. */
export const MOVES = [
  'nextCell',
  'previousCell',
  'nextString',
  'previousString',
  'nextBeat',
  'previousBeat',
  'nextBar',
  'previousBar',
] as const;
export type Move = (typeof MOVES)[number];

/**
 * Where a move takes a cursor that stands on a string line; it goes on in the next or last system of the part where its own
 * ends. Undefined where there is no way on, or where the cursor stands on no string line.
 * @example moveOnStaff(document, { line: 4, character: 9 }, 'nextBar')
 */
export function moveOnStaff(document: TabDocument, place: Place, move: Move): Place | undefined {
  const system = document.systemAt(place.line);
  const at = place.line - (system?.firstLine ?? 0);
  const line = system?.lines[at];
  if (!system || line?.kind !== 'string') return undefined;
  const column = columnOf(line, place.character);
  if (move === 'nextString' || move === 'previousString')
    return toString(document, system, at, column, move === 'nextString' ? 1 : -1);
  const isOn = move.startsWith('next');
  const stops = move.endsWith('Cell') ? cells(line) : move.endsWith('Beat') ? beats(system) : bars(system);
  const found = isOn ? stops.find((stop) => stop > column) : stops.findLast((stop) => stop < column);
  if (found !== undefined) return { line: place.line, character: offsetOf(line, found) };
  return inNeighbour(document, system, at, move, isOn);
}

/** Columns at which something stands on a line. */
function cells({ tokens }: StringLine): number[] {
  return tokens.flatMap(({ kind, column }, i) => {
    const before = tokens[i - 1]?.kind;
    const begins = before === undefined || before === 'dash' || before === 'bar';
    return kind !== 'dash' && kind !== 'bar' && begins ? [column] : [];
  });
}

function bars({ reading }: System): number[] {
  return reading.bars.map(({ startColumn }) => startColumn);
}

/** The first column of each beat, where one stands at its time. */
function beats({ reading, header }: System): number[] {
  const ticks = meterTicks(header.meter);
  const beat = fraction(ticks.perBeat, ticks.perQuarter);
  return reading.bars.flatMap(({ startColumn, endColumn, onset, length, pickup }) => {
    const found: number[] = [];
    let last: number | undefined;
    for (let column = startColumn; column < endColumn; column++) {
      const time = reading.columnTimes[column];
      if (!time) continue;
      // A pickup's beats are counted from its end.
      const own = pickup ? subtract(length, subtract(time, onset)) : subtract(time, onset);
      const count = (own.n * beat.d) / (own.d * beat.n);
      if (Number.isInteger(count) && count !== last) {
        found.push(column);
        last = count;
      }
    }
    return found;
  });
}

function toString(
  document: TabDocument,
  system: System,
  at: number,
  column: number,
  by: 1 | -1,
): Place | undefined {
  for (let i = at + by; i >= 0 && i < system.lines.length; i += by) {
    const place = onLine(system, i, column);
    if (place) return place;
  }
  const next = neighbour(document, system, by);
  if (!next) return undefined;
  const lines = next.reading.strings.map(({ line }) => line);
  const line = by > 0 ? lines[0] : lines.at(-1);
  return line === undefined ? undefined : onLine(next, line, column);
}

function onLine(system: System, at: number, column: number): Place | undefined {
  const line = system.lines[at];
  if (line?.kind !== 'string') return undefined;
  return { line: system.firstLine + at, character: offsetOf(line, Math.min(column, line.width)) };
}

function neighbour(document: TabDocument, system: System, by: 1 | -1): System | undefined {
  const { systems } = document;
  const part = system.header.part;
  for (let i = systems.indexOf(system) + by; i >= 0 && i < systems.length; i += by) {
    const other = systems[i];
    if (other && other.header.part === part && other.reading.strings.length > 0) return other;
  }
  return undefined;
}

/** The same string of the next system, at its first stop, or of the last one at its last. */
function inNeighbour(
  document: TabDocument,
  system: System,
  at: number,
  move: Move,
  isOn: boolean,
): Place | undefined {
  const other = neighbour(document, system, isOn ? 1 : -1);
  if (!other) return undefined;
  const number = system.reading.strings.find(({ line }) => line === at)?.number;
  const own = other.reading.strings.find((string) => string.number === number) ?? other.reading.strings[0];
  const line = own && other.lines[own.line];
  if (!own || line?.kind !== 'string') return undefined;
  const stops = move.endsWith('Cell') ? cells(line) : move.endsWith('Beat') ? beats(other) : bars(other);
  const stop = isOn ? stops[0] : stops.at(-1);
  if (stop === undefined) return inNeighbour(document, other, own.line, move, isOn);
  return { line: other.firstLine + own.line, character: offsetOf(line, stop) };
}
