import type { Piece } from './pieces';

/** How the columns of a passage may be set. */
export interface LayoutInput {
  /** First column (that of the opening bar sign) and the column past the last one. */
  readonly from: number;
  readonly to: number;
  readonly pieces: readonly Piece[];
  /** Marks of rows: they keep apart, too. */
  readonly marks: readonly {
    readonly row: number;
    readonly column: number;
    readonly width: number;
    readonly touches: boolean;
  }[];
  /** Columns that carry no time and hold nothing but second digits: they go when no digit needs them. */
  readonly spare: ReadonlySet<number>;
  /** Columns of bar signs: nothing may be set on them. */
  readonly signs: ReadonlySet<number>;
  /** Whether every second digit gets a column of its own. */
  readonly roomy: boolean;
  /** The least new column of an old one; with it, columns on which nothing stands take no room of their own. */
  readonly floor: ((column: number) => number) | undefined;
}

/** Where everything goes. */
export interface Layout {
  /** The new column of each old one, from `from` to `to` (inclusive: its last entry is the width). */
  readonly columns: readonly number[];
  readonly placed: readonly PlacedPiece[];
}

export interface PlacedPiece {
  readonly piece: Piece;
  readonly start: number;
  /** What is written; a slide is drawn out to touch both its notes. */
  readonly text: string;
}

/**
 * Leaves every column where it was; undefined when something has another width than before, or when pieces that went
 * to other strings lie over each other. Whether they may touch is for the reader of the lines to see.
 */
export function leaveAsItIs({ from, to, pieces }: LayoutInput): Layout | undefined {
  const placed = pieces.map((piece): PlacedPiece => {
    // A slide keeps the length to which it was drawn.
    const drawn = /^[/\\]+$/.test(piece.was.text) && piece.was.text.startsWith(piece.text);
    return { piece, start: piece.was.column - from, text: drawn ? piece.was.text : piece.text };
  });
  if (placed.some(({ piece, text }) => text.length !== piece.was.text.length)) return undefined;
  const ends = new Map<number, number>();
  for (const { piece, start, text } of [...placed].sort((a, b) => a.start - b.start)) {
    if (start < (ends.get(piece.string) ?? 0)) return undefined;
    ends.set(piece.string, start + text.length);
  }
  return { columns: Array.from({ length: to - from + 1 }, (_, i) => i), placed };
}

/** Sets columns from left to right, each as early as everything on it allows. */
export function layOut(input: LayoutInput): Layout {
  const byColumn = new Map<number, Piece[]>();
  for (const piece of input.pieces) {
    const list = byColumn.get(piece.column);
    if (list) list.push(piece);
    else byColumn.set(piece.column, [piece]);
  }
  const setter = new Setter(input);
  const columns: number[] = [];
  let position = 0;
  for (let column = input.from; column < input.to; column++) {
    const pieces = byColumn.get(column) ?? [];
    const marks = input.marks.filter((mark) => mark.column === column);
    const least = Math.max(position, input.floor?.(column) ?? 0);
    const sign = input.signs.has(column);
    position = setter.earliest(least, pieces, marks, sign);
    columns.push(position);
    setter.set(position, pieces, marks, sign);
    const empty = input.floor !== undefined && !sign && pieces.length === 0 && marks.length === 0;
    position += empty ? 0 : setter.widthOf(column, pieces);
  }
  columns.push(Math.max(position, setter.farthest));
  return { columns, placed: setter.placed };
}

class Setter {
  readonly placed: PlacedPiece[] = [];
  /** First free position on each string. */
  private readonly free = new Map<number, number>();
  /** First position behind the last bar sign. */
  private behindSign = 0;
  /** What was set last on each string, with all that it touches. */
  private readonly lastText = new Map<number, string>();
  /** Signs that go with the next piece of their string. */
  private readonly waiting = new Map<number, Piece[]>();
  private readonly freeInRow = new Map<number, number>();
  /** Digits still to come from the numbers set last: so many spare columns stay. */
  private digitsLeft = 0;
  farthest = 0;

  constructor(private readonly input: LayoutInput) {}

  earliest(position: number, pieces: readonly Piece[], marks: LayoutInput['marks'], sign: boolean): number {
    // Nothing reaches over a bar sign, neither on a string nor in a row; the signs of one bar line stay together.
    let at = sign ? Math.max(position, this.farthest) : position;
    if (sign && this.behindSign !== position) at = Math.max(at, ...this.freeInRow.values());
    for (const piece of pieces) {
      if (piece.sticks === 'before' || piece.sticks === 'both' || piece.sticks === 'after') continue;
      const free = this.freeOn(piece.string);
      at = Math.max(at, free + this.gapBefore(piece) + this.waitingWidth(piece.string) + piece.lead);
    }
    for (const mark of marks) at = Math.max(at, (this.freeInRow.get(mark.row) ?? 0) + (mark.touches ? 0 : 1));
    return at;
  }

  private freeOn(string: number): number {
    return Math.max(this.free.get(string) ?? 0, this.behindSign);
  }

  /** Notes on one string keep a dash between, unless a sign joins them or they touched before. */
  private gapBefore(piece: Piece): number {
    const last = this.lastText.get(piece.string);
    if (last === undefined) return 0;
    const waiting = this.waiting.get(piece.string);
    if (waiting) return waiting[0]?.sticks === 'both' ? 0 : 1;
    const digitsMeet = /\d\.?$/.test(last) && /^\d/.test(piece.text);
    return piece.tight && !digitsMeet && !/[/\\]$/.test(last) ? 0 : 1;
  }

  private waitingWidth(string: number): number {
    return (this.waiting.get(string) ?? []).reduce((sum, piece) => sum + piece.text.length, 0);
  }

  set(position: number, pieces: readonly Piece[], marks: LayoutInput['marks'], sign: boolean): void {
    if (sign) {
      this.lastText.clear();
      this.behindSign = position + 1;
    }
    for (const piece of pieces) this.setPiece(piece, position);
    for (const mark of marks) this.freeInRow.set(mark.row, position + mark.width);
  }

  private setPiece(piece: Piece, position: number): void {
    const { string, sticks } = piece;
    if (sticks === 'after' || sticks === 'both') {
      const list = this.waiting.get(string) ?? [];
      // A sign between two notes stands right behind the first one and is drawn out to the second when it must touch.
      list.push(piece);
      this.waiting.set(string, list);
      return;
    }
    if (sticks === 'before') {
      this.put(piece, this.freeOn(string), piece.text);
      return;
    }
    const start = position - piece.lead;
    this.putWaiting(string, start);
    this.put(piece, start, piece.text);
  }

  private putWaiting(string: number, until: number): void {
    const waiting = this.waiting.get(string);
    if (!waiting) return;
    this.waiting.delete(string);
    let end = until;
    for (const piece of [...waiting].reverse()) {
      const free = this.freeOn(string);
      if (piece.sticks === 'both') {
        const slides = /^[/\\]$/.test(piece.text);
        this.put(piece, free, slides ? piece.text.repeat(Math.max(1, end - free)) : piece.text);
      } else {
        end -= piece.text.length;
        this.put(piece, end, piece.text);
      }
    }
  }

  private put(piece: Piece, start: number, text: string): void {
    this.placed.push({ piece, start, text });
    const end = start + text.length;
    const free = this.free.get(piece.string) ?? 0;
    const touched = start === free ? (this.lastText.get(piece.string) ?? '') : '';
    this.free.set(piece.string, Math.max(free, end));
    this.lastText.set(piece.string, touched + text);
    this.farthest = Math.max(this.farthest, end);
  }

  widthOf(column: number, pieces: readonly Piece[]): number {
    if (this.input.spare.has(column)) {
      if (this.digitsLeft <= 0) return 0;
      this.digitsLeft -= 1;
      return 1;
    }
    const numbers = pieces.filter(({ digits }) => digits > 0);
    if (numbers.length === 0) return 1;
    const extra = Math.max(...numbers.map(({ digits }) => digits - 1));
    this.digitsLeft = extra;
    if (!this.input.roomy || extra === 0) return 1;
    const first = column + 1 + Math.max(...numbers.map(({ digitsAfter = 0 }) => digitsAfter));
    let spare = 0;
    while (this.input.spare.has(first + spare)) spare += 1;
    return 1 + Math.max(0, extra - spare);
  }
}
