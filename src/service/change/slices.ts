import { opensRepeat } from '../../notation/bars';
import type { NoteReading } from '../../notation/reading';
import type { Range, System, TabDocument } from '../../notation/tabDocument';

/** Bars of one system: the piece of a passage that stands in it. */
export interface Slice {
  readonly system: System;
  /** Index of the system in its document. */
  readonly index: number;
  readonly firstBar: number;
  readonly lastBar: number;
}

/** Whether a slice is its whole system. */
export function isWhole({ system, firstBar, lastBar }: Slice): boolean {
  return firstBar === 0 && lastBar === system.reading.bars.length - 1;
}

/** Whether a slice has string lines; a system may be rows alone, such as chords over words. */
export function hasStrings({ system }: Slice): boolean {
  return system.lines.some((line) => line.kind === 'string');
}

/** The notes of a slice with their index in the system's reading. */
export function notesOf({ system, firstBar, lastBar }: Slice): { index: number; note: NoteReading }[] {
  return system.reading.notes.flatMap((note, index) =>
    note.bar >= firstBar && note.bar <= lastBar ? [{ index, note }] : [],
  );
}

/** What a range is widened to, beside whole bars. */
export interface Widening {
  /** Takes in the bars whose notes are joined to notes of the range by signs; true when left out. */
  readonly joined?: boolean;
  /** Takes the whole system where a remark such as `x3` says how often it is played; true when left out. */
  readonly repeated?: boolean;
}

/**
 * A range widened to bar signs: the bars of every system that it touches; a system of rows alone is taken whole. An empty range in a system means the bar at
 * the cursor; a range over several systems takes the first from its start on and the last up to its end, as far as
 * its ends lie inside them; whole lines mean whole systems.
 */
export function slicesIn(document: TabDocument, range: Range | undefined, widening: Widening = {}): Slice[] {
  const slices: Slice[] = [];
  document.systems.forEach((system, index) => {
    const { bars } = system.reading;
    if (bars.length === 0) return;
    const whole = { system, index, firstBar: 0, lastBar: bars.length - 1 };
    if (!range) {
      slices.push(whole);
      return;
    }
    const last = system.firstLine + system.lines.length - 1;
    if (range.start.line > last || range.end.line < system.firstLine) return;
    if (range.end.line === system.firstLine && range.end.character === 0 && range.start.line < range.end.line)
      return;
    slices.push(
      isLines(system, range) || !hasStrings(whole)
        ? whole
        : widened({ ...whole, ...barsIn(system, range) }, widening),
    );
  });
  return slices;
}

/** Whether a range covers a system by whole lines, or from outside to outside. */
function isLines(system: System, { start, end }: Range): boolean {
  const last = system.firstLine + system.lines.length - 1;
  const fromStart = start.line < system.firstLine || start.character === 0;
  const endText = system.lines[end.line - system.firstLine]?.text.length ?? 0;
  const toEnd = end.line > last || end.character >= endText || (end.character === 0 && end.line > start.line);
  return fromStart && toEnd && (start.line !== end.line || end.character > 0 || start.character > 0);
}

function barsIn(system: System, { start, end }: Range): { firstBar: number; lastBar: number } {
  const { bars } = system.reading;
  const inside = (line: number): boolean =>
    line >= system.firstLine && line < system.firstLine + system.lines.length;
  const column = (line: number, character: number): number => {
    const text = system.lines[line - system.firstLine];
    return text?.kind === 'string' || text?.kind === 'row' ? Math.max(0, character - text.bodyStart) : 0;
  };
  const columns = [
    inside(start.line) ? column(start.line, start.character) : undefined,
    inside(end.line) ? column(end.line, end.character) : undefined,
  ];
  const oneSystem = columns[0] !== undefined && columns[1] !== undefined;
  // Within one system a selection drawn over several lines means its columns, whichever way it was drawn.
  const low = oneSystem ? Math.min(columns[0] ?? 0, columns[1] ?? 0) : (columns[0] ?? 0);
  const high = oneSystem ? Math.max(columns[0] ?? 0, columns[1] ?? 0) : (columns[1] ?? Infinity);
  const firstBar = bars.findIndex((bar) => low < bar.endColumn);
  // A selection that ends behind a bar sign ends with the bar before it.
  const beyond = bars.findIndex((_, i) => Math.max(low, high - 1) < (bars[i + 1]?.startColumn ?? Infinity));
  const first = firstBar < 0 ? bars.length - 1 : firstBar;
  return { firstBar: first, lastBar: Math.max(first, beyond < 0 ? bars.length - 1 : beyond) };
}

/** A slice that cuts no joined notes apart, and leaves whole what a remark says is played several times. */
function widened(slice: Slice, { joined = true, repeated = true }: Widening): Slice {
  const { notes, bars, repeats } = slice.system.reading;
  const timesRemark = slice.system.lines.some(
    (line) => line.kind === 'string' && line.remark?.times !== undefined,
  );
  const byRemark = repeats.some((repeat) => repeat.firstBar === 0 && !opensRepeat(bars[0]?.openSign ?? ''));
  if (repeated && timesRemark && byRemark) return { ...slice, firstBar: 0, lastBar: bars.length - 1 };
  let { firstBar, lastBar } = slice;
  for (let changed = joined; changed;) {
    changed = false;
    for (const note of notes) {
      const from = note.joinedFrom === undefined ? undefined : notes[note.joinedFrom];
      if (!from || from.bar === note.bar) continue;
      // Where both lie outside, on either side, nothing is cut.
      const cutsStart = from.bar < firstBar && note.bar >= firstBar && note.bar <= lastBar;
      const cutsEnd = from.bar >= firstBar && from.bar <= lastBar && note.bar > lastBar;
      if (cutsStart) [firstBar, changed] = [from.bar, true];
      if (cutsEnd) [lastBar, changed] = [note.bar, true];
    }
  }
  return { ...slice, firstBar, lastBar };
}
