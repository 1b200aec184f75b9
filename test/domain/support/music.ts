import { add, compare, equal, type Fraction, subtract } from '../../../src/music/fraction';
import type { NoteReading, SystemReading } from '../../../src/notation/reading';

/* What a reading says, apart from where its letters stand, so that two texts can be held against each other. */

export interface Music {
  readonly notes: readonly MusicNote[];
  readonly stops: readonly string[];
  readonly bars: readonly string[];
  readonly marks: readonly string[];
}

export interface MusicNote {
  readonly at: string;
  readonly onset: string;
  readonly string: number;
  readonly fret: number | undefined;
  readonly kind: string;
  readonly touched: number | undefined;
  readonly ghost: boolean;
  readonly pitches: string;
  readonly techniques: readonly string[];
  /** Onset of the note it is joined to. */
  readonly joinedTo: string | undefined;
  readonly ends: string | undefined;
  readonly muted: readonly string[];
}

export function time(at: Fraction): string {
  return at.d === 1 ? String(at.n) : `${at.n}/${at.d}`;
}

/** What the bars from one to another say, counted from the first of them. */
export function musicOf(reading: SystemReading, firstBar = 0, lastBar = reading.bars.length - 1): Music {
  const start = reading.bars[firstBar]?.onset ?? { n: 0, d: 1 };
  const last = reading.bars[lastBar];
  const end = last ? add(last.onset, last.length) : start;
  const within = (at: Fraction): boolean => compare(at, start) >= 0 && compare(at, end) < 0;
  const whole = lastBar === reading.bars.length - 1;
  const written = (at: Fraction): string => time(subtract(at, start));
  const notes = reading.notes
    .filter((note) => note.bar >= firstBar && note.bar <= lastBar)
    .map((note): MusicNote => {
      const joined = note.joinedFrom === undefined ? undefined : reading.notes[note.joinedFrom];
      const inside = joined !== undefined && joined.bar >= firstBar;
      return {
        at: `${written(note.onset)} on ${note.string}`,
        onset: written(note.onset),
        string: note.string,
        fret: note.kind === 'natural-harmonic' ? undefined : note.fret,
        kind: note.kind,
        touched: note.touched,
        ghost: note.ghost,
        pitches: note.pitches.map(({ midi }) => midi.toFixed(2)).join('+'),
        techniques: note.techniques.map(
          ({ kind, sign, toFret, onset }) =>
            `${kind} ${sign.replace(/[\d./]+$/, (tail) => (kind === 'bend' ? '' : tail))} ${toFret ?? ''} ${
              onset ? `at ${written(onset)}` : ''
            }`,
        ),
        joinedTo: inside ? written(joined.onset) : undefined,
        ends: note.ends && (whole || compare(note.ends, end) < 0) ? written(note.ends) : undefined,
        muted: coveringMarks(reading, note),
      };
    });
  return {
    notes: notes.sort((a, b) => (a.at < b.at ? -1 : 1)),
    stops: reading.stops
      // A stop in the moment in which its string is struck again says nothing.
      .filter(
        ({ onset, string }) =>
          within(onset) && !reading.notes.some((n) => n.string === string && equal(n.onset, onset)),
      )
      .map(({ onset, string }) => `${written(onset)} on ${string}`)
      .sort(),
    bars: reading.bars
      .slice(firstBar, lastBar + 1)
      .map(({ length, pickup }) => `${time(length)}${pickup ? ' pickup' : ''}`),
    marks: reading.rows
      .filter(({ row }) => row !== 'count')
      .flatMap(({ row, word, marks }) =>
        marks
          .filter(({ onset }) => within(onset))
          .map(
            ({ text, onset }) =>
              `${word} ${row === 'palm mute' ? '' : text.replace(/-+$/, '')} at ${written(onset)}`,
          ),
      )
      .sort(),
  };
}

/** Words of the palm-mute rows whose marks stand over a note. */
function coveringMarks(reading: SystemReading, note: NoteReading): string[] {
  return reading.rows
    .filter(({ row }) => row === 'palm mute')
    .filter(({ marks }) =>
      marks.some(({ column, start, end }) => column <= note.column && note.column < column + end - start),
    )
    .map(({ word }) => word);
}
