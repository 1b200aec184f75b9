import { equal, formatFraction } from '../../music/fraction';
import type { NoteReading, SystemReading } from '../../notation/reading';

/**
 * All that a reading says, one text for each thing, sorted, so that two readings can be compared: bars and repeats,
 * notes with what is done to them, stops. Columns are left out, and so is the count.
 */
export function sayingsOf(reading: SystemReading): string[] {
  const { bars, notes, repeats } = reading;
  // A stop in the moment in which its string is struck again says nothing.
  const stops = reading.stops.filter(
    (stop) => !notes.some((note) => note.string === stop.string && equal(note.onset, stop.onset)),
  );
  return [
    ...bars.map(({ length, pickup }, i) => `bar ${i} ${formatFraction(length)} ${pickup ? 'pickup' : ''}`),
    ...repeats.map(({ firstBar, lastBar, times }) => `repeat ${firstBar} ${lastBar} ${times}`),
    ...notes.map((note) => noteSaying(note, notes)),
    ...stops.map(({ string, onset }) => stopSaying(string, formatFraction(onset))),
  ].sort();
}

/** The marks of rows with their times, the count left out. */
export function marksOf({ rows }: SystemReading): string {
  return rows
    .filter(({ row }) => row !== 'count')
    .map(({ word, marks }) => [word, ...marks.map((m) => `${m.text}@${formatFraction(m.onset)}`)].join(' '))
    .filter((row) => row.includes('@'))
    .join('\n');
}

function noteSaying(note: NoteReading, notes: readonly NoteReading[]): string {
  const from = note.joinedFrom === undefined ? undefined : notes[note.joinedFrom];
  return [
    plainNoteSaying(note.string, note.fret ?? 'x', formatFraction(note.onset)),
    ...(note.kind === 'fretted' || note.kind === 'muted' ? [] : [note.kind, note.touched]),
    ...(note.ghost ? ['ghost'] : []),
    ...note.techniques.map(
      ({ kind, toFret, onset }) => `${kind} ${toFret ?? ''} ${onset ? formatFraction(onset) : ''}`,
    ),
    ...(from ? [`from ${from.fret} ${formatFraction(from.onset)}`] : []),
  ].join(' ');
}

/** What a reading says of a plain note. */
export function plainNoteSaying(string: number, fret: number | string, onset: string): string {
  return `note ${string} ${fret} at ${onset}`;
}

/** What a reading says of a stop. */
export function stopSaying(string: number, onset: string): string {
  return `stop ${string} at ${onset}`;
}
