import { equal, subtract, type Fraction } from '../../music/fraction';
import type { NoteReading } from '../../notation/reading';
import type { System } from '../../notation/tabDocument';
import { PALM_MUTE, type Bar } from './barList';

/**
 * Whether the bars of some systems, one after the other, say what the bars that they came from say: every note on its
 * string and fret at its time in the bar, every stop, every mark of a row, the length of the bar. An empty bar has to be
 * silent.
 */
export function saysWhatItCameFrom(systems: readonly System[], bars: readonly Bar[]): boolean {
  const now = systems.flatMap((system) => system.reading.bars.map((_, bar) => ({ system, bar })));
  return (
    now.length === bars.length &&
    now.every(({ system, bar }, i) => {
      const from = bars[i]?.from;
      if (!from) return contents(system, bar).length === 0;
      const [a, b] = [system.reading.bars[bar], from.system.reading.bars[from.bar]];
      if (!a || !b || !equal(a.length, b.length)) return false;
      return contents(system, bar).join('\n') === contents(from.system, from.bar).join('\n');
    })
  );
}

/** What a bar says, one line for each thing, sorted. */
export function contents(system: System, bar: number): string[] {
  const { reading } = system;
  const own = reading.bars[bar];
  if (!own) return [];
  const inBar = (onset: Fraction): string => {
    const { n, d } = subtract(onset, own.onset);
    return `${n}/${d}`;
  };
  const notes = reading.notes
    .filter((note) => note.bar === bar)
    .map((note) => `${noteWords(note, inBar)}${isMuted(system, note) ? ' palm mute' : ''}`);
  // A bar sign belongs to the bar that it opens.
  const first = reading.bars[bar - 1]?.endColumn ?? 0;
  const isHere = (column: number): boolean => column >= first && column < own.endColumn;
  const stops = reading.stops
    .filter(({ column }) => isHere(column))
    .map(({ string, onset }) => `stop ${string} ${inBar(onset)}`);
  const marks = reading.rows
    .filter(({ row }) => row !== 'count' && row !== PALM_MUTE)
    .flatMap(({ row, word, marks: all }) =>
      all
        .filter(({ column }) => isHere(column))
        .map(({ text, onset }) => `${row} ${row === 'text' ? word : ''} ${text} ${inBar(onset)}`),
    );
  return [...notes, ...stops, ...marks].sort();
}

/** Whether a run of a palm mute row lies over a note's column. */
export function isMuted({ lines, reading }: System, { column }: NoteReading): boolean {
  return reading.rows.some(({ row, line }) => {
    const own = row === PALM_MUTE ? lines[line] : undefined;
    return (
      own?.kind === 'row' &&
      own.marks.some((mark) => mark.column <= column && column < mark.column + mark.width)
    );
  });
}

function noteWords(note: NoteReading, inBar: (onset: Fraction) => string): string {
  const techniques = note.techniques
    .map(({ kind, sign, toFret }) => `${kind} ${sign}${toFret ?? ''}`)
    .join(' ');
  return `note ${note.string} ${note.kind} ${note.fret ?? 'x'} ${note.touched ?? ''} ${String(note.ghost)} ${inBar(note.onset)} ${techniques}`;
}
