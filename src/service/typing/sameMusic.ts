import { equal } from '../../music/fraction';
import type { TextSpan } from '../../notation/parsedLine';
import type { NoteReading, StopReading, SystemReading } from '../../notation/reading';
import type { System } from '../../notation/tabDocument';

/** What was changed in a system: a stretch of one line, and perhaps one column of all lines. */
export interface Touched {
  /** Of the system. */
  readonly line: number;
  /** Offsets before and after; what they overlap may change. */
  readonly before: TextSpan;
  readonly after: TextSpan;
  readonly added?: number;
  readonly removed?: number;
}

/**
 * Whether everything that was not touched begins when it did: every note with its string and fret, every stop, every mark
 * of a row, every bar. `strictly` asks it of each column too, so that nothing typed there later comes at another time.
 */
export function saysTheSame(old: System, now: System, touched: Touched, strictly: boolean): boolean {
  return (
    sameLines(old, now) &&
    sameBars(old.reading, now.reading) &&
    sameNotes(old.reading, now.reading, touched) &&
    sameStops(old.reading, now.reading, touched) &&
    sameMarks(old.reading, now.reading) &&
    (!strictly || sameColumns(old.reading, now.reading, touched))
  );
}

function sameLines({ lines: old, reading: before }: System, { lines: now, reading: after }: System): boolean {
  return (
    old.length === now.length &&
    old.every(({ kind }, i) => kind === now[i]?.kind) &&
    before.strings.every(({ number }, i) => number === after.strings[i]?.number)
  );
}

function sameBars({ bars: old }: SystemReading, { bars: now }: SystemReading): boolean {
  return (
    old.length <= now.length &&
    old.every(({ onset, length }, i) => {
      const bar = now[i];
      return bar !== undefined && equal(bar.onset, onset) && equal(bar.length, length);
    })
  );
}

const overlaps = (a: TextSpan, b: TextSpan): boolean => a.start < b.end && b.start < a.end;

function sameNotes(old: SystemReading, now: SystemReading, touched: Touched): boolean {
  const before = apart(old.notes, touched.line, touched.before);
  const after = apart(now.notes, touched.line, touched.after);
  return (
    before.length === after.length &&
    before.every((note, i) => {
      const other = after[i];
      return (
        other !== undefined &&
        note.line === other.line &&
        note.kind === other.kind &&
        note.fret === other.fret &&
        note.touched === other.touched &&
        (note.line === touched.line || isPlayedTheSame(note, other)) &&
        equal(note.onset, other.onset)
      );
    })
  );
}

/** A line that is not typed on keeps its signs, too. */
function isPlayedTheSame(note: NoteReading, other: NoteReading): boolean {
  return (
    note.ghost === other.ghost &&
    note.techniques.length === other.techniques.length &&
    note.techniques.every(({ kind, toFret }, i) => {
      const technique = other.techniques[i];
      return technique?.kind === kind && technique.toFret === toFret;
    })
  );
}

function sameStops(old: SystemReading, now: SystemReading, touched: Touched): boolean {
  const before = apart(old.stops, touched.line, touched.before);
  const after = apart(now.stops, touched.line, touched.after);
  return (
    before.length === after.length &&
    before.every(({ line, onset }, i) => {
      const stop = after[i];
      return stop?.line === line && equal(stop.onset, onset);
    })
  );
}

/** What was not touched, line by line from left to right. */
function apart<T extends NoteReading | StopReading>(all: readonly T[], line: number, span: TextSpan): T[] {
  return all
    .filter((one) => one.line !== line || !overlaps(ownSpan(one), span))
    .sort((a, b) => a.line - b.line || a.start - b.start);
}

/** A note without the signs about its number: `(5-)` reaches over dashes to its bracket. */
function ownSpan(one: NoteReading | StopReading): TextSpan {
  if (!('numberStart' in one)) return one;
  return { start: one.numberStart, end: one.kind === 'artificial-harmonic' ? one.end : one.numberEnd };
}

function sameMarks({ rows: old }: SystemReading, { rows: now }: SystemReading): boolean {
  return old.every(({ row, marks }, i) => {
    if (row === 'count') return true;
    const others = now[i]?.marks ?? [];
    return (
      marks.length === others.length &&
      marks.every((mark, k) => {
        const other = others[k];
        // A mark may be drawn out with its columns.
        return (
          other !== undefined && plain(other.text) === plain(mark.text) && equal(mark.onset, other.onset)
        );
      })
    );
  });
}

const plain = (text: string): string => text.replace(/-+/g, '-');

function sameColumns(old: SystemReading, now: SystemReading, { added, removed }: Touched): boolean {
  return old.bars.every(({ startColumn, endColumn }) => {
    for (let column = startColumn; column < endColumn; column++) {
      if (column === removed) continue;
      const shift =
        (added !== undefined && column >= added ? 1 : 0) -
        (removed !== undefined && column > removed ? 1 : 0);
      const before = old.columnTimes[column];
      const after = now.columnTimes[column + shift];
      if (!before || !after || !equal(before, after)) return false;
    }
    return true;
  });
}
