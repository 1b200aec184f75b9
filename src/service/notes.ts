import { add, compare, subtract, toNumber, type Fraction } from '../music/fraction';
import { formatNoteName } from '../music/noteName';
import type { NoteReading, SoundingPitch } from '../notation/reading';
import type { System, TabDocument } from '../notation/tabDocument';
import type { NoteEntry } from './serviceApi';

/**
 * Every note, part after part in the order in which they begin, each in time order; notes that begin together by
 * string, the highest number first. A course gives two entries, repeats are not unrolled.
 */
export function notes(document: TabDocument): readonly NoteEntry[] {
  const parts = new Map<string | undefined, NoteEntry[]>(document.parts.map((part) => [part, []]));
  for (const system of document.systems) {
    const entries = parts.get(system.header.part) ?? [];
    const { part, firstBar, onset } = document.placeOf(system);
    for (const note of system.reading.notes) {
      const start = add(onset, note.onset);
      const duration = lasting(start, document.endOf(system, note));
      const pitches = note.pitches.length > 0 ? note.pitches : [undefined];
      for (const pitch of pitches) {
        entries.push({
          part: part ?? null,
          bar: firstBar + note.bar,
          ...positionOf(system, note),
          string: note.string,
          fret: note.fret ?? null,
          midi: pitch === undefined ? null : rounded(pitch.midi),
          name: pitch === undefined ? '' : formatNoteName(pitch.name),
          onset: toNumber(start),
          duration: toNumber(duration),
          onsetFraction: [start.n, start.d],
          durationFraction: [duration.n, duration.d],
          techniques: techniquesOf(note, pitch),
        });
      }
    }
  }
  return [...parts.values()].flat();
}

/** The time from a note's start to its end; none for a note whose end the text puts before it. */
function lasting(start: Fraction, end: Fraction): Fraction {
  return compare(end, start) > 0 ? subtract(end, start) : { n: 0, d: 1 };
}

function positionOf(system: System, note: NoteReading): { line: number; column: number } {
  return { line: system.firstLine + note.line + 1, column: note.start + 1 };
}

function techniquesOf(note: NoteReading, pitch: SoundingPitch | undefined): NoteEntry['techniques'] {
  const [first] = note.pitches;
  // A technique's target is told for the first string of a course; the other goes as far.
  const apart = first && pitch ? pitch.midi - first.midi : 0;
  return note.techniques.map(({ sign, to }) =>
    to === undefined ? { sign } : { sign, to: rounded(to + apart) },
  );
}

/** To a hundredth of a cent, without the dust of binary fractions. */
function rounded(midi: number): number {
  return Math.round(midi * 10000) / 10000;
}
