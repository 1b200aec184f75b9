import { compare } from '../music/fraction';
import { harmonicAt, nearestNodes } from '../music/harmonics';
import type { FretReading } from '../instrument/sounding';
import { splitFrets, type CellLine, type CellNote, type CellTechnique } from './cells';
import type { Header } from './header';
import { fingerboardOf, spellPitches, stoppedPitches } from './headerViews';
import type { StringLine } from './parsedLine';
import type {
  BarReading,
  NoteReading,
  Problem,
  SoundingPitch,
  StopReading,
  StringReading,
  Technique,
} from './reading';
import type { TimeAt } from './systemReading';

/** A string line with what stands on it. */
export interface LineCells {
  /** Index of the line in the system. */
  readonly at: number;
  readonly line: StringLine;
  readonly cells: CellLine;
  readonly string: StringReading;
}

/**
 * The notes of a system with their pitches and times.
 * @param columns the column of each note, in the order of the lines and of the notes on them
 * @param problems takes what does not fit the tuning or the hand's direction
 */
export function readNotes(
  lines: readonly LineCells[],
  columns: readonly number[],
  bars: readonly BarReading[],
  timeAt: TimeAt,
  header: Header,
  problems: Problem[],
): { notes: NoteReading[]; stops: StopReading[] } {
  const drafts: Draft[] = [];
  const stops: StopReading[] = [];
  let next = 0;
  for (const line of lines) {
    const reader = new LineReader(line, header, problems);
    const own = line.cells.notes.map((cell) => reader.note(cell, columns[next++] ?? 0, bars, timeAt));
    line.cells.notes.forEach(({ joinedFrom }, i) => {
      const draft = own[i];
      if (draft && joinedFrom !== undefined) draft.from = own[joinedFrom];
    });
    const lineStops = line.cells.stops.map(({ column, start, end }): StopReading => ({
      string: line.string.number,
      line: line.at,
      column,
      start,
      end,
      onset: timeAt(column),
    }));
    endNotes(own, lineStops);
    drafts.push(...own);
    stops.push(...lineStops);
  }
  return { notes: inTimeOrder(drafts), stops };
}

/** A note whose end and place among all notes of the system are still to be written into it. */
interface Draft {
  readonly note: { -readonly [K in keyof NoteReading]: NoteReading[K] };
  /** The note that a sign brings here. */
  from: Draft | undefined;
  /** Index among all notes of the system. */
  place: number;
}

/** A note rings until the next event on its string. */
function endNotes(notes: readonly Draft[], stops: readonly StopReading[]): void {
  notes.forEach(({ note }, i) => {
    const following = notes[i + 1]?.note;
    const stop = stops.find((s) => s.column > note.column);
    const byStop = stop && (!following || stop.column < following.column);
    note.ends = byStop ? stop.onset : following?.onset;
  });
}

/** Puts the notes in order, in place: copies of records this large are what a reading would spend its time on. */
function inTimeOrder(drafts: Draft[]): NoteReading[] {
  drafts.sort(
    ({ note: a }, { note: b }) => compare(a.onset, b.onset) || b.string - a.string || a.column - b.column,
  );
  drafts.forEach((draft, i) => (draft.place = i));
  return drafts.map(({ note, from }) => {
    note.joinedFrom = from?.place;
    return note;
  });
}

const NO_PITCHES: readonly SoundingPitch[] = Object.freeze([]);
const NO_TECHNIQUES: readonly Technique[] = Object.freeze([]);

/** Gives the notes of one line their pitches. */
class LineReader {
  private readonly board;
  private readonly stopped;

  constructor(
    private readonly line: LineCells,
    private readonly header: Header,
    private readonly problems: Problem[],
  ) {
    this.board = fingerboardOf(header);
    this.stopped = stoppedPitches(header);
  }

  note(cell: CellNote, column: number, bars: readonly BarReading[], timeAt: TimeAt): Draft {
    const midis = this.midis(cell);
    this.tellDirection(cell);
    const bar = bars.findIndex((b) => column < b.endColumn);
    return {
      from: undefined,
      place: 0,
      note: {
        kind: cell.kind,
        string: this.line.string.number,
        line: this.line.at,
        column,
        start: cell.start,
        end: cell.end,
        numberStart: cell.numberStart,
        numberEnd: cell.numberEnd,
        fret: cell.fret,
        touched: cell.touched,
        ghost: cell.ghost,
        bar: bar < 0 ? Math.max(0, bars.length - 1) : bar,
        onset: timeAt(column),
        ends: undefined,
        pitches: this.pitches(cell, midis),
        techniques:
          cell.techniques.length === 0
            ? NO_TECHNIQUES
            : cell.techniques.map((technique) => this.technique(technique, cell, midis, timeAt)),
        joinedFrom: undefined,
      },
    };
  }

  private pitches(cell: CellNote, midis: readonly number[]): readonly SoundingPitch[] {
    if (midis.length === 0) return NO_PITCHES;
    return cell.touched === undefined ? this.stopped(midis) : spellPitches(midis, this.header);
  }

  /** What a cell sounds; nothing for `x`, and nothing, with a problem, where it cannot sound. */
  private midis(cell: CellNote): readonly number[] {
    const { index } = this.line.string;
    if (cell.fret === undefined || index < 0) return [];
    const read = this.board.read(index, cell.fret);
    if (!read.ok) {
      this.tellFret(cell, read);
      return [];
    }
    const { touched } = cell;
    if (touched === undefined) return read.midis;
    const node = this.board.absoluteFret(index, touched) - read.stopFret;
    const harmonic = harmonicAt(Math.round(node * 1000) / 1000);
    if (harmonic?.kind === 'harmonic') return read.midis.map((midi) => midi + harmonic.semitones);
    this.problems.push({
      kind: harmonic ? 'harmonic-ambiguous' : 'no-harmonic-node',
      line: this.line.at,
      start: cell.start,
      end: cell.end,
      facts: {
        touched,
        choices: (harmonic ? harmonic.choices : nearestNodes(node).map(({ fret }) => fret)).map(
          (fret) => Math.round((fret + touched - node) * 10) / 10,
        ),
      },
    });
    return [];
  }

  private tellFret(cell: CellNote, read: Extract<FretReading, { ok: false }>): void {
    if (read.reason === 'no-such-string' || cell.fret === undefined) return;
    const kind = {
      'below-capo': 'fret-below-capo',
      'past-neck': 'fret-past-neck',
      'below-string-start': 'fret-below-string',
    }[read.reason];
    this.problems.push({
      kind,
      line: this.line.at,
      start: cell.numberStart,
      end: cell.numberEnd,
      facts: {
        fret: cell.fret,
        most: read.most,
        least: read.least ?? -1,
        limit: read.limit,
        frets: this.header.frets,
        string: this.line.string.number,
        split: splitFrets(String(cell.fret), read.most),
      },
    });
  }

  private technique(
    technique: CellTechnique,
    cell: CellNote,
    midis: readonly number[],
    timeAt: TimeAt,
  ): Technique {
    const { index } = this.line.string;
    const [own] = midis;
    return {
      kind: technique.kind,
      sign: technique.sign,
      line: this.line.at,
      start: technique.start,
      end: technique.end,
      to: index < 0 || own === undefined ? undefined : this.target(technique, cell, own),
      toFret: technique.toFret,
      onset: technique.apart ? timeAt(technique.column) : undefined,
    };
  }

  /** The MIDI number a technique ends on. */
  private target(technique: CellTechnique, cell: CellNote, own: number): number | undefined {
    const { index } = this.line.string;
    const goal = technique.toNote === undefined ? undefined : this.line.cells.notes[technique.toNote]?.fret;
    if (goal !== undefined) return this.board.pitches(index, goal)?.[0];
    if (technique.amount !== undefined) return own + technique.amount;
    if (technique.kind === 'release' && technique.toFret === undefined) return own;
    if (technique.toFret === undefined || cell.fret === undefined) return undefined;
    // By the distance in frets, so that a bent harmonic rises as far as a bent note does.
    return own + this.board.absoluteFret(index, technique.toFret) - this.board.absoluteFret(index, cell.fret);
  }

  // ---- what contradicts itself

  private tellDirection(cell: CellNote): void {
    const from = cell.joinedFrom === undefined ? undefined : this.line.cells.notes[cell.joinedFrom];
    for (const technique of cell.techniques) {
      if (
        from?.fret !== undefined &&
        cell.fret !== undefined &&
        from.kind === 'fretted' &&
        cell.kind === 'fretted'
      ) {
        const rise = this.rise(from.fret, cell.fret);
        if (technique.kind === 'hammer-on' && rise <= 0)
          this.tell('hammer-not-rising', technique, from.start, cell.end, from.fret, cell.fret);
        if (technique.kind === 'pull-off' && rise >= 0)
          this.tell('pull-not-falling', technique, from.start, cell.end, from.fret, cell.fret);
      }
      this.tellBend(technique, cell);
      const goal = technique.toNote === undefined ? undefined : this.line.cells.notes[technique.toNote];
      if (technique.kind === 'slide' && goal?.fret !== undefined && cell.fret !== undefined) {
        const rise = this.rise(cell.fret, goal.fret);
        if (technique.sign === '/' ? rise <= 0 : rise >= 0)
          this.tell('slide-against-sign', technique, cell.start, goal.end, cell.fret, goal.fret);
      }
    }
  }

  private tellBend(technique: CellTechnique, cell: CellNote): void {
    if ((technique.kind !== 'bend' && technique.kind !== 'pre-bend') || cell.fret === undefined) return;
    const open = cell.kind === 'fretted' && this.isOpen(cell.fret);
    if (open) this.tell('bend-open-string', technique, cell.start, technique.end, cell.fret, cell.fret);
    else if (technique.toFret !== undefined && technique.toFret <= cell.fret) {
      this.tell('bend-not-rising', technique, cell.start, technique.end, cell.fret, technique.toFret);
    }
  }

  private isOpen(fret: number): boolean {
    const read = this.line.string.index < 0 ? undefined : this.board.read(this.line.string.index, fret);
    return fret === 0 || (read?.ok === true && read.midis[0] === read.openMidis[0]);
  }

  private rise(from: number, to: number): number {
    const { index } = this.line.string;
    return index < 0 ? to - from : this.board.absoluteFret(index, to) - this.board.absoluteFret(index, from);
  }

  private tell(
    kind: string,
    technique: CellTechnique,
    start: number,
    end: number,
    from: number,
    to: number,
  ): void {
    this.problems.push({
      kind,
      line: this.line.at,
      start,
      end: Math.max(end, technique.end),
      facts: { sign: technique.sign, signStart: technique.start, signEnd: technique.end, from, to },
    });
  }
}
