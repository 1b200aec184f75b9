import { subtract } from '../../music/fraction';
import { ROW_NAMES, type RowName } from '../../notation/rowNames';
import { writeCount } from '../../notation/time/writeCount';
import type { System, TabDocument } from '../../notation/tabDocument';
import { ROW_GUIDE } from '../rowGuide';
import type { Offer } from './item';

/** The systems that a line belongs to or stands right against. */
export function systemsAbout(document: TabDocument, line: number): readonly System[] {
  const found = [line, line - 1, line + 1].map((at) => document.systemAt(at));
  return [...new Set(found.filter((system) => system !== undefined))];
}

/** Rows that may still come more than once. */
const REPEATABLE: ReadonlySet<RowName> = new Set(['words', 'text']);

/**
 * The rows that systems have not yet, their bar line under those of the strings. A count comes written out where it
 * says the times that are read now.
 * @param keepsBody whether the line has its bar line and what follows already
 */
export function rowOffers(systems: readonly System[], keepsBody: boolean): readonly Offer[] {
  const [system] = systems;
  if (!system) return [];
  const have = new Set(systems.flatMap(({ reading }) => reading.rows.map(({ row }) => row)));
  const width = bodyColumn(system);
  return ROW_NAMES.filter(
    (row) => row !== 'text' && (keepsBody || REPEATABLE.has(row) || !have.has(row)),
  ).map((row) => {
    const word = row === 'palm mute' && width < row.length + 1 ? 'PM' : row;
    const label = width > word.length ? word.padEnd(width) : `${word} `;
    const body = row === 'count' && systems.length === 1 ? countBody(system) : '|';
    return {
      label: row,
      detail: ROW_GUIDE[row].what,
      documentation: ROW_GUIDE[row].values,
      text: keepsBody ? label : label + body,
    };
  });
}

/** Where the bar line of a system's lines stands. */
function bodyColumn(system: System): number {
  const line = system.lines.find(({ kind }) => kind === 'string') ?? system.lines[0];
  return line?.kind === 'string' || line?.kind === 'row' ? line.bodyStart : 0;
}

function countBody({ reading, header }: System): string {
  const bars = reading.bars.map(({ startColumn, endColumn, onset, length, pickup }) => ({
    start: startColumn,
    end: endColumn,
    onset,
    length,
    pickup,
  }));
  // What stops a string has its time as well as what strikes one.
  const columns = new Map([...reading.stops, ...reading.notes].map(({ column, onset }) => [column, onset]));
  const onsets = [...columns].flatMap(([column, onset]) => {
    const bar = reading.bars.findIndex(({ endColumn }) => column < endColumn);
    const begin = reading.bars[bar]?.onset;
    return begin ? [{ column, bar, time: subtract(onset, begin) }] : [];
  });
  return (bars.length > 0 ? writeCount(header.meter, bars, onsets) : undefined) ?? '|';
}
