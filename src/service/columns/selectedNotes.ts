import { equal } from '../../music/fraction';
import { columnsFrom } from '../../notation/columns';
import type { NoteReading, StopReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { noteAtCursor } from '../locate';
import type { Range } from '../records';
import { columnOf } from '../typing/stringCell';

/** Notes that move as one: those that signs join, with the stop that ends them. */
export interface Chain {
  readonly notes: readonly NoteReading[];
  readonly stop: StopReading | undefined;
  /** Index of the line in the system. */
  readonly line: number;
  /** UTF-16 offsets in the line, with all signs. */
  readonly start: number;
  readonly end: number;
}

/**
 * The notes in some selections of one system, with all that signs join to them. A selection over several lines means its
 * columns on each of them, or whole lines; a cursor means the note beside it.
 */
export function selectedNotes(document: TabDocument, system: System, ranges: readonly Range[]): Chain[] {
  const { notes } = system.reading;
  const wanted = new Set<number>();
  for (const range of ranges) for (const index of notesIn(document, system, range)) wanted.add(index);
  const chains: Chain[] = [];
  while (wanted.size > 0) {
    const [first] = wanted;
    if (first === undefined) break;
    const chain = joinedWith(notes, first);
    for (const index of chain) wanted.delete(index);
    chains.push(
      chainOf(
        system,
        chain.flatMap((index) => notes[index] ?? []),
      ),
    );
  }
  return chains;
}

function notesIn(document: TabDocument, system: System, range: Range): number[] {
  const { notes } = system.reading;
  const { start, end } = range;
  if (start.line === end.line && start.character === end.character) {
    const found = noteAtCursor(document, start);
    return found?.system === system ? [notes.indexOf(found.note)] : [];
  }
  const wholeLines = end.character === 0 && end.line > start.line;
  const last = wholeLines ? end.line - 1 : end.line;
  const columns = wholeLines && start.character === 0 ? [0, Infinity] : columnsOf(system, range);
  const [low = 0, high = 0] = columns;
  return notes.flatMap((note, index) => {
    const line = system.lines[note.line];
    const own = system.firstLine + note.line;
    if (line?.kind !== 'string' || own < start.line || own > last) return [];
    return columnOf(line, note.start) < high && columnOf(line, note.end) > low ? [index] : [];
  });
}

/** First column, and the one behind the last; a block without width means the column that it stands on. */
function columnsOf(system: System, { start, end }: Range): [number, number] {
  const column = (at: Range['start'], outside: number): number => {
    const line = system.lines[at.line - system.firstLine];
    if (line?.kind !== 'string' && line?.kind !== 'row') return outside;
    return columnsFrom(line.text, line.bodyStart)(at.character);
  };
  const [a, b] = [column(start, 0), column(end, Infinity)];
  return [Math.min(a, b), a === b ? a + 1 : Math.max(a, b)];
}

/** Indexes of the notes that signs join to one, and its own. */
function joinedWith(notes: readonly NoteReading[], first: number): number[] {
  const chain = new Set([first]);
  for (let size = 0; size !== chain.size;) {
    size = chain.size;
    notes.forEach(({ joinedFrom }, index) => {
      if (joinedFrom === undefined) return;
      if (chain.has(index)) chain.add(joinedFrom);
      if (chain.has(joinedFrom)) chain.add(index);
    });
  }
  return [...chain].sort((a, b) => a - b);
}

function chainOf({ reading }: System, notes: readonly NoteReading[]): Chain {
  const [first] = notes;
  const last = notes.at(-1);
  const line = first?.line ?? 0;
  const stop = reading.stops.find(
    (one) => one.line === line && last?.ends !== undefined && equal(one.onset, last.ends),
  );
  const spans = notes.flatMap((note) => [note, ...note.techniques.filter((sign) => sign.line === line)]);
  return {
    notes,
    stop,
    line,
    start: Math.min(...spans.map(({ start }) => start)),
    end: Math.max(...spans.map(({ end }) => end), stop?.end ?? 0),
  };
}

/** The same chains in a system that reads as theirs does, such as theirs under a count row. */
export function sameChains(
  chains: readonly Chain[],
  { reading: old }: System,
  { reading: now }: System,
): Chain[] {
  return chains.flatMap((chain) => {
    const notes = chain.notes.flatMap((note) => now.notes[old.notes.indexOf(note)] ?? []);
    const [first] = notes;
    const [before] = chain.notes;
    if (!first || !before) return [];
    const aside = first.start - before.start;
    const stop = chain.stop && now.stops[old.stops.indexOf(chain.stop)];
    return [{ notes, stop, line: first.line, start: chain.start + aside, end: chain.end + aside }];
  });
}
