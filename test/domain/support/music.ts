import { add, compare, equal, type Fraction, subtract, ZERO } from '../../../src/music/fraction';
import type { NoteReading, PlacedMark, SystemReading, Technique } from '../../../src/notation/reading';

/* What a reading says, apart from where its letters stand, so that two texts can be held against each other. */

export interface Music {
  readonly notes: readonly MusicNote[];
  readonly stops: readonly string[];
  /** Length, and whether a repeat begins and ends there. */
  readonly bars: readonly string[];
  readonly marks: readonly MusicMark[];
}

export interface MusicMark {
  readonly text: string;
  /** Whether it stands at the column of a note. */
  readonly atNote: boolean;
  readonly onset: Fraction;
}

export interface MusicNote {
  readonly onset: Fraction;
  readonly string: number;
  /** Undefined for `x` and natural harmonics. */
  readonly fret: number | undefined;
  readonly kind: string;
  readonly touched: number | undefined;
  readonly ghost: boolean;
  readonly pitches: string;
  readonly techniques: readonly string[];
  /** Onset of the note it is joined to, within the passage. */
  readonly joinedTo: Fraction | undefined;
  readonly ends: Fraction | undefined;
  /** Rows whose marks cover it. */
  readonly under: readonly string[];
}

/** How what is read is to be told. */
export interface Telling {
  readonly firstBar?: number;
  readonly lastBar?: number;
  /** Frets added to a note, by its index. */
  readonly up?: (index: number) => number;
  /** Where a harmonic is touched instead. */
  readonly touched?: (index: number) => number | undefined;
  /** The string that takes a string's place. */
  readonly string?: (string: number) => number;
  /** Whether it matters what sounds. */
  readonly pitches?: boolean;
}

export function time(at: Fraction): string {
  return at.d === 1 ? String(at.n) : `${at.n}/${at.d}`;
}

/** What the bars from one to another say, counted from the first of them. */
export function musicOf(reading: SystemReading, telling: Telling = {}): Music {
  return new Teller(reading, telling).tell();
}

class Teller {
  private readonly firstBar: number;
  private readonly lastBar: number;
  private readonly start: Fraction;
  private readonly end: Fraction;

  constructor(
    private readonly reading: SystemReading,
    private readonly telling: Telling,
  ) {
    const { bars } = reading;
    this.firstBar = telling.firstBar ?? 0;
    this.lastBar = telling.lastBar ?? bars.length - 1;
    const last = bars[this.lastBar];
    this.start = bars[this.firstBar]?.onset ?? ZERO;
    this.end = last ? add(last.onset, last.length) : this.start;
  }

  tell(): Music {
    const { notes, stops, bars, rows } = this.reading;
    return {
      notes: notes
        .flatMap((note, i) => (this.holds(note) ? [this.note(note, i)] : []))
        .sort((a, b) => compare(a.onset, b.onset) || b.string - a.string),
      // A stop in the moment in which its string is struck again says nothing.
      stops: stops
        .filter(({ onset, string }) => {
          const struck = notes.some((note) => note.string === string && equal(note.onset, onset));
          return this.isWithin(onset) && !struck;
        })
        .map(({ onset, string }) => `${time(this.from(onset))} on ${this.string(string)}`)
        .sort(),
      bars: bars.slice(this.firstBar, this.lastBar + 1).map(({ length, openSign, closeSign }) => {
        return `${openSign.endsWith(':') ? '|:' : '|'} ${time(length)} ${closeSign.startsWith(':') ? ':|' : '|'}`;
      }),
      marks: rows
        .filter(({ row }) => row !== 'count')
        .flatMap(({ row, word, marks }) =>
          marks.flatMap((mark) => {
            const carried = this.isCarriedIn(row, mark);
            if (!carried && !this.isAt(mark.column)) return [];
            // What covers columns may be cut too short for its letters.
            const text = covers(row, mark.text) ? word : `${word} ${mark.text}`;
            const atNote = notes.some(({ column }) => column === mark.column);
            return [{ text, atNote, onset: carried ? ZERO : this.from(mark.onset) }];
          }),
        ),
    };
  }

  /** Whether a column belongs to the passage; a bar sign belongs to the bar that it opens. */
  private isAt(column: number): boolean {
    const { bars } = this.reading;
    const from = this.firstBar === 0 ? 0 : (bars[this.firstBar - 1]?.endColumn ?? 0);
    const to = this.lastBar === bars.length - 1 ? Infinity : (bars[this.lastBar]?.endColumn ?? 0);
    return column >= from && column < to;
  }

  /** Whether a mark begins before the passage and covers columns of it. */
  private isCarriedIn(row: string, { text, column, start, end }: PlacedMark): boolean {
    const first = this.reading.bars[this.firstBar]?.startColumn ?? 0;
    return covers(row, text) && column < first && !this.isAt(column) && column + end - start > first;
  }

  private holds({ bar }: NoteReading): boolean {
    return bar >= this.firstBar && bar <= this.lastBar;
  }

  private isWithin(at: Fraction): boolean {
    return compare(at, this.start) >= 0 && compare(at, this.end) < 0;
  }

  private from(at: Fraction): Fraction {
    return subtract(at, this.start);
  }

  private string(string: number): number {
    return this.telling.string?.(string) ?? string;
  }

  private note(note: NoteReading, index: number): MusicNote {
    const { notes, bars } = this.reading;
    const { up, touched, pitches = true } = this.telling;
    const joined = note.joinedFrom === undefined ? undefined : notes[note.joinedFrom];
    const goesOn = this.lastBar === bars.length - 1;
    const harmonic = note.kind === 'natural-harmonic';
    return {
      onset: this.from(note.onset),
      string: this.string(note.string),
      fret: note.fret === undefined || harmonic ? undefined : note.fret + (up?.(index) ?? 0),
      kind: note.kind,
      touched: note.touched === undefined ? undefined : (touched?.(index) ?? note.touched),
      ghost: note.ghost,
      pitches: pitches ? note.pitches.map(({ midi }) => midi.toFixed(2)).join('+') : '',
      techniques: this.techniques(note, index),
      joinedTo: joined && this.holds(joined) ? this.from(joined.onset) : undefined,
      ends: note.ends && (goesOn || compare(note.ends, this.end) < 0) ? this.from(note.ends) : undefined,
      under: this.under(note),
    };
  }

  /** Techniques in words; a slide out of the passage goes to nowhere, one into it comes from nowhere. */
  private techniques(note: NoteReading, index: number): string[] {
    const { notes } = this.reading;
    const goal = notes.find(({ joinedFrom }) => joinedFrom === index);
    const leaves = goal !== undefined && !this.holds(goal);
    const from = note.joinedFrom === undefined ? undefined : notes[note.joinedFrom];
    const slide = from && !this.holds(from) && from.techniques.find(({ kind }) => kind === 'slide');
    const own = note.techniques.map((technique) => this.technique(technique, index, leaves));
    return slide ? [`slide-from-nowhere ${slide.sign}`, ...own] : own;
  }

  private technique({ kind, sign, toFret, onset }: Technique, index: number, leaves: boolean): string {
    const named = kind === 'slide' && leaves ? 'slide-to-nowhere' : kind;
    const target = toFret === undefined ? '' : ` to ${toFret + (this.telling.up?.(index) ?? 0)}`;
    const amount = kind === 'bend' || kind === 'pre-bend' || kind === 'release' || kind === 'trill';
    return `${named} ${amount && toFret !== undefined ? '' : sign}${target}${onset ? ` at ${time(this.from(onset))}` : ''}`;
  }

  /** Palm-mute rows whose marks stand over a note. */
  private under(note: NoteReading): string[] {
    return this.reading.rows
      .filter(({ row }) => row === 'palm mute')
      .filter(({ marks }) =>
        marks.some(({ column, start, end }) => column <= note.column && note.column < column + end - start),
      )
      .map(({ word }) => word);
  }
}

/** Whether a row's mark speaks of all the columns that it takes. */
function covers(row: string, text: string): boolean {
  return row === 'palm mute' || text.endsWith('--');
}
