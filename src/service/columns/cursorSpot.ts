import type { System } from '../../notation/tabDocument';
import { columnAt } from '../locate';
import type { Place } from '../records';
import { systemOf } from '../typing/putFrets';
import { offsetOf } from '../typing/stringCell';
import { keysOf } from './barList';

/** A place in a system that a change of its lines does not move. */
export interface Spot {
  /** Of the line, as in a list of bars; undefined where the cursor is on none. */
  readonly key: string | undefined;
  /** Index of the bar. */
  readonly bar: number;
  /** Columns from the beginning of the bar. */
  readonly offset: number;
}

/** Where a cursor stands in a system; before the first bar sign means the first bar, behind the last one the last. */
export function spotAt(system: System, place: Place): Spot {
  const { bars } = system.reading;
  const key = keysOf(system)[place.line - system.firstLine];
  const line = system.lines[place.line - system.firstLine];
  const before = (line?.kind === 'string' || line?.kind === 'row') && place.character >= line.bodyStart;
  const column = columnAt(system, place) ?? (before ? Infinity : 0);
  // On a bar sign one writes on behind it.
  const at = bars.findIndex(({ endColumn }) => column < endColumn);
  const bar = at < 0 ? bars.length - 1 : at;
  const { startColumn = 0, endColumn = 0 } = bars[bar] ?? {};
  return { key, bar, offset: Math.max(0, Math.min(column, endColumn - 1) - startColumn) };
}

/**
 * Where a spot is in systems laid anew, with a blank line between each two; bars are counted through all of them.
 * @param from the line of the document on which the first one begins
 */
export function placeOf(
  like: System,
  systems: readonly (readonly string[])[],
  from: number,
  { key, bar, offset }: Spot,
): Place {
  let line = from;
  let at = bar;
  for (const [i, lines] of systems.entries()) {
    const system = systemOf(like, lines);
    const { bars, strings } = system.reading;
    if (at >= bars.length && i < systems.length - 1) {
      at -= bars.length;
      line += lines.length + 1;
      continue;
    }
    const found = key === undefined ? -1 : keysOf(system).indexOf(key);
    const row = found < 0 ? (strings[0]?.line ?? 0) : found;
    const own = system.lines[row];
    const { startColumn = 0, endColumn = 1 } = bars[Math.min(at, bars.length - 1)] ?? {};
    const column = Math.min(startColumn + offset, endColumn - 1);
    if (own?.kind !== 'string' && own?.kind !== 'row') return { line: line + row, character: 0 };
    // A row without marks there is shorter than its strings.
    return { line: line + row, character: Math.min(offsetOf(own, column), own.text.length) };
  }
  return { line: from, character: 0 };
}
