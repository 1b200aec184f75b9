import { readCells, type CellNote, type CellTechnique } from '../cells';
import { columnsFrom, type ColumnAt } from '../columns';
import { asciiSigns } from '../lineParts';
import type { StringLine, Token } from '../parsedLine';
import type { NoteReading, SystemReading } from '../reading';
import type { System } from '../tabDocument';

/** Where a note is to stand. */
export interface NotePlace {
  /** The number players give the string, in the new tuning. */
  readonly string: number;
  /** The number to write. */
  readonly fret: number;
  /** Where a harmonic is touched, counted as the text counts. */
  readonly touched?: number;
  /**
   * How far the frets move that bends, releases and trills name. As far as the note's own, when left out; another way
   * where 0 is no neighbour of 1, under a partial capo or on a string that begins up the neck.
   */
  readonly targetsBy?: number;
}

/**
 * Something written on one string, to be set at a column. A sign that touches its neighbour goes where the neighbour
 * goes.
 */
export interface Piece {
  readonly string: number;
  readonly text: string;
  /** The column, of the system as it was, whose place it takes. */
  readonly column: number;
  /** Characters of `text` that stand before that column: the bracket of a ghost note in a chord. */
  readonly lead: number;
  /** Digits of its fret; 0 for what is no number. */
  readonly digits: number;
  /** Characters from the column to the first digit: a bracket. */
  readonly digitsAfter?: number;
  readonly sticks: 'nowhere' | 'before' | 'after' | 'both';
  /** Whether it may stand right behind what comes before it on its string, as it did. */
  readonly tight: boolean;
  /** The string on which it stood. */
  readonly from: number;
  /** Where it stood there, and as what. */
  readonly was: { readonly column: number; readonly text: string };
  /** Whether it is a note. */
  readonly note?: boolean;
  /** For a stop: the column of the note it ends, −1 for one from before the system. */
  readonly stops?: number;
  /** For a note whose digits stand at the column: whether its last one does, how wide its number is, and whether it has no bracket. */
  readonly aligned?: { readonly last: boolean; readonly width: number; readonly plain: boolean };
}

/** A stretch of a system. */
export interface Passage {
  /** Bars, as indices in the reading. */
  readonly firstBar: number;
  readonly lastBar: number;
  /** Columns, `to` exclusive. */
  readonly from: number;
  readonly to: number;
  /** The columns whose marks belong here, `marksEnd` exclusive: what stands at the sign of a cut speaks of the next bar. */
  readonly marksFrom: number;
  readonly marksEnd: number;
}

/** Chooses the place of a note by its index in the reading; undefined leaves it out. */
export type PlaceNote = (index: number) => NotePlace | undefined;

/** Everything on the strings of a passage, each note at its new place, in the order of columns. */
export function piecesOf(system: System, passage: Passage, place: PlaceNote): Piece[] {
  const { reading } = system;
  const pieces: Piece[] = [];
  for (const { line: at, number } of reading.strings) {
    const line = system.lines[at];
    if (line?.kind === 'string')
      pieces.push(...new LinePieces(line, at, number, reading, place, passage).make());
  }
  const kept = pieces.filter(
    (piece) => piece.column >= passage.from && piece.column < passage.to && !isSpentStop(piece, pieces),
  );
  return alignedByLastDigits(kept).sort((a, b) => a.column - b.column);
}

/** Where notes stood together by their last digits, those with two digits stand so again, as long as one has only one. */
function alignedByLastDigits(pieces: readonly Piece[]): Piece[] {
  const byLast = new Set<number>();
  const single = new Set<number>();
  for (const { column, aligned } of pieces) {
    if (aligned?.last) byLast.add(column);
    if (aligned?.plain && aligned.width === 1) single.add(column);
  }
  return pieces.map((piece) => {
    const { aligned, column, lead } = piece;
    if (!aligned || aligned.width === 1 || !byLast.has(column) || !single.has(column)) return piece;
    return { ...piece, lead: lead + aligned.width - 1, digits: 1 };
  });
}

/** Whether the note that a stop is to end has been ended on its new string by another one. */
function isSpentStop({ stops, string, column }: Piece, pieces: readonly Piece[]): boolean {
  if (stops === undefined) return false;
  return pieces.some(
    (other) =>
      other.note === true && other.string === string && other.column > stops && other.column <= column,
  );
}

const BRINGS: ReadonlySet<string> = new Set(['hammer-on', 'pull-off', 'tap', 'slide', 'slide-from-nowhere']);

class LinePieces {
  private readonly cells;
  private readonly columnAt: ColumnAt;
  private readonly indices: readonly number[];
  private readonly pieces: Piece[] = [];

  constructor(
    private readonly line: StringLine,
    at: number,
    private readonly oldString: number,
    private readonly reading: SystemReading,
    private readonly place: PlaceNote,
    private readonly passage: Passage,
  ) {
    this.cells = readCells(line);
    this.columnAt = columnsFrom(line.text, line.bodyStart);
    // The line's own notes in the order of its cells: the reading holds them in order of time, which along one line
    // is the order of columns.
    this.indices = reading.notes
      .flatMap((note, i) => (note.line === at ? [i] : []))
      .sort((a, b) => this.start(a) - this.start(b));
  }

  private start(index: number): number {
    return this.reading.notes[index]?.start ?? 0;
  }

  make(): Piece[] {
    const printed = this.cells.notes.flatMap((cell, i) => {
      const index = this.indices[i];
      const note = index === undefined ? undefined : this.reading.notes[index];
      const place = index === undefined ? undefined : this.place(index);
      return note && place && this.isInside(note) ? [{ cell, note, place }] : [];
    });
    const brackets = this.brackets(printed.map(({ cell }) => cell));
    for (const { cell, note, place } of printed) this.note(cell, note, place, brackets.get(cell) ?? ['', '']);
    for (const stop of this.cells.stops) this.stop(stop);
    return this.pieces;
  }

  /** Brackets that notes of a ghosted group take over from those of it that are not printed. */
  private brackets(printed: readonly CellNote[]): Map<CellNote, readonly [string, string]> {
    const taken = new Map<CellNote, readonly [string, string]>();
    const { text } = this.line;
    let group: CellNote[] = [];
    for (const cell of this.cells.notes) {
      if (text.slice(cell.start, cell.numberStart).includes('(')) group = [];
      group.push(cell);
      if (!text.slice(cell.numberEnd, cell.end).includes(')')) continue;
      const left = group.filter((one) => printed.includes(one));
      const [first, last] = [left[0], left.at(-1)];
      if (first && last && left.length < group.length) {
        const opening = first === group[0] ? '' : '(';
        const closing = last === cell ? '' : ')';
        taken.set(first, [opening, first === last ? closing : '']);
        if (first !== last) taken.set(last, ['', closing]);
      }
      group = [];
    }
    return taken;
  }

  /** A stop goes where the note went that it ends. */
  private stop({ column }: Token): void {
    let string = this.oldString;
    let owner: number | undefined;
    let isOut = false;
    for (const index of this.indices) {
      const note = this.reading.notes[index];
      // By columns, as the reading goes: a note may stand before a sign that is written in front of it.
      if (!note || note.column >= column) continue;
      const place = this.place(index);
      string = place?.string ?? string;
      owner = note.column;
      isOut = place === undefined;
    }
    // A stop for a note that is left out would end another one.
    if (isOut) return;
    this.pieces.push({
      string,
      text: '.',
      from: this.oldString,
      was: { column, text: '.' },
      column,
      lead: 0,
      digits: 0,
      sticks: 'nowhere',
      tight: true,
      stops: owner ?? -1,
    });
  }

  private isInside({ bar }: NoteReading): boolean {
    return bar >= this.passage.firstBar && bar <= this.passage.lastBar;
  }

  private note(
    cell: CellNote,
    note: NoteReading,
    place: NotePlace,
    [opening, closing]: readonly [string, string],
  ): void {
    const { text } = this.line;
    const brought = this.broughtFromOutside(cell, note);
    const before = opening + text.slice(cell.start, cell.numberStart);
    const after = text.slice(cell.numberEnd, cell.end) + closing;
    const number = this.numberOf(cell, place);
    const suffix =
      cell.kind === 'artificial-harmonic'
        ? after.replace(/<[\d.]+>/, `<${decimal(place.touched ?? cell.touched ?? 12)}>`)
        : after;
    const bracketFirst = cell.openColumn !== undefined && note.column > cell.openColumn;
    const plain = before === '' && cell.openColumn === undefined;
    const last = note.column === cell.lastColumn && cell.lastColumn > cell.firstColumn;
    this.pieces.push({
      string: place.string,
      text: brought + before + number + suffix,
      from: this.oldString,
      was: this.written(cell.start, cell.end),
      column: note.column,
      lead: brought.length + (bracketFirst ? before.length : 0),
      digits: cell.fret !== undefined && cell.kind !== 'natural-harmonic' ? number.length : 0,
      digitsAfter: bracketFirst ? 0 : before.length,
      sticks: 'nowhere',
      tight: brought === '' && isSign(text[cell.start - 1]),
      note: true,
      ...(plain || bracketFirst ? { aligned: { last, width: number.length, plain } } : {}),
    });
    for (const technique of cell.techniques) {
      const isBrought = brought !== '' && BRINGS.has(technique.kind) && technique.end <= cell.start;
      if (!isBrought) this.technique(technique, cell, place);
    }
  }

  /** The sign that brings a note from in front of the passage: the note then comes from nowhere. */
  private broughtFromOutside(cell: CellNote, note: NoteReading): string {
    const own = cell.techniques.find(({ kind, end }) => BRINGS.has(kind) && end <= cell.start);
    if (own) return own.column < this.passage.from ? own.sign : '';
    const start = note.joinedFrom === undefined ? undefined : this.reading.notes[note.joinedFrom];
    if (!start || this.isInside(start)) return '';
    const left = start.techniques.find(({ kind }) => kind === 'slide');
    return left ? left.sign : '';
  }

  private numberOf(cell: CellNote, place: NotePlace): string {
    if (cell.kind === 'muted') return this.line.text.slice(cell.numberStart, cell.numberEnd);
    if (cell.kind === 'natural-harmonic') return decimal(place.touched ?? cell.touched ?? 12);
    return String(place.fret);
  }

  private technique(technique: CellTechnique, cell: CellNote, place: NotePlace): void {
    const { start, end } = technique;
    // A slide's sign may stand behind the bar sign at which the passage ends.
    const outside = technique.kind === 'slide' && technique.column >= this.passage.to;
    const column = outside ? cell.lastColumn : technique.column;
    const slides = technique.kind.startsWith('slide');
    const sticks = outside ? 'before' : this.sticks(start, end);
    this.pieces.push({
      string: place.string,
      text: slides ? technique.sign : this.techniqueText(technique, cell, place),
      from: this.oldString,
      was: this.written(start, end),
      column,
      lead: 0,
      digits: 0,
      // What brings the next note may go with it; what belongs to this one never does.
      sticks: BRINGS.has(technique.kind)
        ? sticks
        : sticks === 'nowhere' || sticks === 'after'
          ? 'nowhere'
          : 'before',
      tight: true,
    });
  }

  /** A technique's text, with the frets it names moved as far as its note is. */
  private techniqueText(technique: CellTechnique, cell: CellNote, place: NotePlace): string {
    const text = asciiSigns(this.line.text.slice(technique.start, technique.end));
    if (technique.toFret === undefined || cell.fret === undefined) return text;
    const target = decimal(technique.toFret + (place.targetsBy ?? place.fret - cell.fret));
    // A release may stand apart from its fret: `r--7`.
    return text.replace(/[\d.]+$/, target);
  }

  private written(start: number, end: number): Piece['was'] {
    return { column: this.columnAt(start), text: asciiSigns(this.line.text.slice(start, end)) };
  }

  private sticks(start: number, end: number): Piece['sticks'] {
    const before = isSign(this.line.text[start - 1]);
    const after = isSign(this.line.text[end]);
    return before && after ? 'both' : before ? 'before' : after ? 'after' : 'nowhere';
  }
}

/** Whether a character is part of what a player wrote between the dashes. */
function isSign(character: string | undefined): boolean {
  return character !== undefined && /[^-–—─−|│┃¦:\s]/.test(character);
}

function decimal(value: number): string {
  return String(Math.round(value * 100) / 100);
}
