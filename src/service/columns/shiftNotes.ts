import { add, compare, ZERO, type Fraction } from '../../music/fraction';
import { columnsFrom } from '../../notation/columns';
import type { System, TabDocument } from '../../notation/tabDocument';
import { slicesIn } from '../change/slices';
import { whereInWords } from '../hover/beat';
import type { ServiceError } from '../serviceApi';
import { systemOf } from '../typing/putFrets';
import { withBarPutOn } from './barCells';
import { barListOf, keysOf, printBars } from './barList';
import { NO_SYSTEM, type ColumnsDone } from './columns';
import type { ColumnsRequest } from './columnsRequest';
import { countedSystem } from './countedSystem';
import { placeOf } from './cursorSpot';
import { movedCells, type Move } from './movedCells';
import { noteInWords } from './noteWords';
import { selectedNotes, sameChains, type Chain } from './selectedNotes';
import { isShifted } from './shiftedSounds';
import { barWith, cellAt, cellWith, stepOf } from './shiftSteps';

/**
 * Shifts the notes that are selected, on their strings, to an earlier or a later time; all else stays. Notes that signs
 * join move together, with the stop that ends them. Nothing is written over and nothing falls off: where another
 * note stands, or a bar sign may not be crossed, it is refused with a sentence that says where.
 */
export function shiftNotes(document: TabDocument, request: ColumnsRequest): ColumnsDone | ServiceError {
  const ranges = [request.range, ...(request.ranges ?? [])];
  const systems = new Set(ranges.flatMap((range) => slicesIn(document, range).map(({ system }) => system)));
  const [system, another] = systems;
  if (!system) return NO_SYSTEM;
  if (another) return { error: 'Select notes of one system for this.' };
  const chains = selectedNotes(document, system, ranges);
  if (chains.length === 0)
    return {
      error: 'No note is selected: place the cursor on a fret, or select the notes that are to move.',
    };
  const plain = shifted(document, system, system, chains, request);
  const under = 'again' in plain ? countedSystem(system) : undefined;
  if (!under) return 'again' in plain ? { error: plain.again } : plain;
  const done = shifted(document, system, under, sameChains(chains, system, under), request);
  return 'again' in done ? { error: done.again } : done;
}

/** What may be tried once more under a count row, and what is said where that fails too. */
interface Again {
  readonly again: string;
}

function shifted(
  document: TabDocument,
  given: System,
  from: System,
  chains: readonly Chain[],
  { action, step: by = 'column', overBar = 'push' }: ColumnsRequest,
): ColumnsDone | ServiceError | Again {
  const later = action === 'shiftLater';
  const notes = chains.flatMap((chain) => chain.notes).sort((a, b) => compare(a.onset, b.onset));
  const [first] = notes;
  if (!first) return NO_SYSTEM;
  const where = (time: Fraction): string => whereInWords(document, from, time);
  const step = stepOf(from, first, by, later);
  if (!step || compare(add(first.onset, step), ZERO) < 0)
    return { error: `${noteInWords(first)} would begin before its system does, so nothing was moved.` };
  const over = notes.find((note) => barWith(from, add(note.onset, step)) !== note.bar);
  if (over && overBar === 'refuse')
    return {
      error: `${noteInWords(over)} in ${where(over.onset)} would go over the bar sign: leave it out of the selection, or let notes go on into the next bar.`,
    };
  const beyond = notes.find(({ onset }) => compare(add(onset, step), from.reading.length) >= 0);
  if (beyond && goesOnBelow(document, given))
    return {
      error: `${noteInWords(beyond)} in ${where(beyond.onset)} would go over the end of its system: join it with the next one first.`,
    };
  const own = barListOf(from);
  if (typeof own === 'string') return { error: own };
  const list = beyond ? withBarPutOn(own) : own;
  const room = systemOf(from, printBars(list));
  const moves: Move[] = [];
  for (const chain of chains) {
    const move = moveOf(room, chain, step);
    const head = chain.notes[0] ?? first;
    if (!move)
      return {
        again: `No column stands where ${inside(noteInWords(head))} in ${where(head.onset)} would go: put in a column first.`,
      };
    moves.push(move);
  }
  const moved = movedCells(list, moves);
  if ('blocked' in moved) {
    const head = moved.blocked.chain.notes[0] ?? first;
    const target = whereInWords(document, room, add(head.onset, step));
    return {
      error: `Something stands where ${inside(noteInWords(head))} would go, in ${target}: clear that first, or select it as well.`,
    };
  }
  const lines = printBars(moved.list);
  const going = new Set(notes);
  const stops = new Set(chains.map(({ stop }) => stop));
  const isRight = isShifted(from, systemOf(from, lines), {
    note: (note) => (going.has(note) ? add(note.onset, step) : note.onset),
    stop: (stop) => (stops.has(stop) ? add(stop.onset, step) : stop.onset),
    mark: (onset) => onset,
    mutesFollow: false,
  });
  if (!isRight)
    return {
      again: `${noteInWords(first)} in ${where(first.onset)} cannot go there without a change of what else sounds, so nothing was moved: put in a column first.`,
    };
  const selects = moved.spans.map(({ length, ...spot }) => {
    const start = placeOf(from, [lines], given.firstLine, spot);
    return { start, end: { line: start.line, character: start.character + length } };
  });
  return {
    from: given.firstLine,
    count: given.lines.length,
    lines,
    said: `${notes.length === 1 ? 'One note stands' : `${notes.length} notes stand`} a ${by} ${later ? 'later' : 'sooner'}.${beyond ? ' A bar was put on.' : ''}`,
    notesIn: given.reading.notes.length,
    moved: notes.length,
    counted: from !== given,
    goesOn: selects[0]?.start ?? { line: given.firstLine, character: 0 },
    selects,
  };
}

/** The cells of a chain and how far they go; undefined where no column has the time that it is due at. */
function moveOf(room: System, chain: Chain, step: Fraction): Move | undefined {
  const [head] = chain.notes;
  const line = room.lines[chain.line];
  const key = keysOf(room)[chain.line];
  if (!head || line?.kind !== 'string' || key === undefined) return undefined;
  const columnOf = columnsFrom(line.text, line.bodyStart);
  const anchor = cellWith(room, head.onset, head.column);
  const due = anchor === undefined ? undefined : cellWith(room, add(head.onset, step), head.column);
  const start = cellAt(room, columnOf(chain.start));
  const last = cellAt(room, columnOf(chain.end - 1));
  if (anchor === undefined || due === undefined || start === undefined || last === undefined)
    return undefined;
  return { chain, key, start, end: last + 1, by: due - anchor };
}

/** Whether the system below belongs to the same section, so that a bar put on would come between. */
function goesOnBelow(document: TabDocument, system: System): boolean {
  const next = document.systems[document.systems.indexOf(system) + 1];
  return next !== undefined && next.section === system.section && next.header.part === system.header.part;
}

/** Words that begin a sentence, inside one. */
function inside(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
