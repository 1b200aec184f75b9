import { equal, type Fraction } from '../../music/fraction';
import type { NoteReading, StopReading } from '../../notation/reading';
import type { System } from '../../notation/tabDocument';
import { PALM_MUTE } from './barList';
import { isMuted } from './sameInBars';

/** Rows that pin times stay where they are; every other line goes along with the beats. */
export const STAYS: ReadonlySet<string> = new Set(['count', 'ending']);

/** When everything of a system is due after a shift, in quarter notes from its start. */
export interface Due {
  readonly note: (note: NoteReading) => Fraction;
  readonly stop: (stop: StopReading) => Fraction;
  readonly mark: (onset: Fraction) => Fraction;
  /** Whether palm mutes go with their notes; else their row stays as it is. */
  readonly mutesFollow: boolean;
}

/** Whether a system says what another one says, everything at the time that it is due, and no bar has another length. */
export function isShifted(old: System, now: System, due: Due): boolean {
  const same: Due = {
    note: ({ onset }) => onset,
    stop: ({ onset }) => onset,
    mark: (onset) => onset,
    mutesFollow: due.mutesFollow,
  };
  return (
    told(old, due) === told(now, same) &&
    old.reading.bars.every((bar, i) => {
      const other = now.reading.bars[i];
      return other !== undefined && equal(bar.length, other.length);
    })
  );
}

function told(system: System, due: Due): string {
  const { notes, stops, rows } = system.reading;
  const at = ({ n, d }: Fraction): string => `${n}/${d}`;
  return [
    ...notes.map((note) => {
      const techniques = note.techniques.map(({ kind, toFret }) => `${kind}${toFret ?? ''}`).join(' ');
      const joined = note.joinedFrom === undefined ? '' : 'joined';
      const muted = due.mutesFollow && isMuted(system, note) ? 'muted' : '';
      return `note ${note.string} ${note.kind} ${note.fret ?? 'x'} ${note.touched ?? ''} ${String(note.ghost)} ${joined} ${muted} ${techniques} ${at(due.note(note))}`;
    }),
    ...stops.map((stop) => `stop ${stop.string} ${at(due.stop(stop))}`),
    ...rows
      .filter(({ row }) => !STAYS.has(row) && row !== PALM_MUTE)
      .flatMap(({ row, marks }) => marks.map(({ text, onset }) => `${row} ${text} ${at(due.mark(onset))}`)),
  ]
    .sort()
    .join('\n');
}
