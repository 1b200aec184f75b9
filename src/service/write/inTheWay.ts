import { add, compare, equal, subtract, type Fraction } from '../../music/fraction';
import type { NoteReading } from '../../notation/reading';
import { barAt, type Canvas, type CanvasBar } from './canvas';

/** The first bar in which something begins or is stopped between two times of a canvas. */
export function barInTheWay(canvas: Canvas, from: Fraction, to: Fraction): CanvasBar | undefined {
  let first: Fraction | undefined;
  for (const { system, start } of canvas.stretches) {
    for (const { onset } of [...system.reading.notes, ...system.reading.stops]) {
      const time = add(start, onset);
      const inside = compare(time, from) >= 0 && compare(time, to) < 0;
      if (inside && (!first || compare(time, first) < 0)) first = time;
    }
  }
  return first && barAt(canvas, first);
}

/**
 * The strings that notes may be written on between two times: those that every system there shows, without those on
 * which one note goes on to another, as a slide does. Undefined where all may be used.
 */
export function freeStrings(canvas: Canvas, from: Fraction, to: Fraction): readonly number[] | undefined {
  const all = canvas.header.tuning.strings.map((_, i) => i + 1);
  let free = all;
  for (const { system, start } of canvas.stretches) {
    const end = add(start, system.reading.length);
    if (compare(end, from) <= 0 || compare(start, to) >= 0) continue;
    const shown = new Set(system.reading.strings.map(({ number }) => number));
    const joined = new Set(
      system.reading.notes
        .filter((note) => goesOnOver(note, system.reading.notes, subtract(from, start)))
        .map(({ string }) => string),
    );
    free = free.filter((string) => shown.has(string) && !joined.has(string));
  }
  return free.length === all.length ? undefined : free;
}

/** Whether a note is joined to one that begins before a time, and itself begins at it or later. */
function goesOnOver(note: NoteReading, notes: readonly NoteReading[], time: Fraction): boolean {
  const from = note.joinedFrom === undefined ? undefined : notes[note.joinedFrom];
  return from !== undefined && compare(from.onset, time) < 0 && compare(note.onset, time) >= 0;
}

/** The pitch of the last note that begins before a time in the system there; the highest of a chord. */
export function noteBefore(canvas: Canvas, time: Fraction): number | undefined {
  let latest: Fraction | undefined;
  let midi: number | undefined;
  for (const { system, start } of canvas.stretches) {
    for (const { onset, pitches } of system.reading.notes) {
      const at = add(start, onset);
      const [pitch] = pitches;
      if (!pitch || compare(at, time) >= 0) continue;
      const later = !latest || compare(at, latest) > 0;
      if (later || (latest && equal(at, latest) && pitch.midi > (midi ?? -Infinity)))
        [latest, midi] = [at, Math.round(pitch.midi)];
    }
  }
  return midi;
}
