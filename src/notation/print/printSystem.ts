import type { Header } from '../header';
import { placesThatFit, usualLabel } from '../labels';
import { parseLine } from '../parseLine';
import type { Label, ParsedLine, RowLine, RowMark, StringLine } from '../parsedLine';
import type { SystemReading } from '../reading';
import { secondDigitColumns } from '../systemReading';
import type { System } from '../tabDocument';
import { widthOfText } from '../columns';
import { passageOf, signsToPrint, stretches, type PrintedSign } from './signs';
import { layOut, leaveAsItIs, type Layout, type LayoutInput } from './layout';
import { piecesOf, type Passage, type PlaceNote } from './pieces';

/** What to print of a system, and how. */
export interface PrintRequest {
  readonly system: System;
  /** Bars to print, first and last, as indices in the reading. */
  readonly firstBar: number;
  readonly lastBar: number;
  readonly place: PlaceNote;
  /** The fields it will stand under. */
  readonly header: Header;
  /** New text of a row's mark (a chord's new name); the text itself to keep it. */
  readonly rewrite?: (row: RowLine, mark: RowMark) => string;
  /** Whether columns stay as they are, or are set anew, or so that every second digit gets a column of its own. */
  readonly columns: 'as they are' | 'set' | 'roomy';
  /** The least new column of an old one, counted from the opening sign; to lay a passage out by its times. */
  readonly floor?: (column: number) => number;
  /** Strings to print, in the new tuning, top to bottom; all of them when left out. */
  readonly strings?: readonly number[];
  /** Whether lines keep their labels as written (the tuning stays). */
  readonly keepLabels: boolean;
}

/**
 * Lines that say what the request asks for, in the order of the system's own lines; undefined where columns are to stay
 * as they are and cannot.
 */
export function printSystem(request: PrintRequest): string[] | undefined {
  return new Printer(request).print();
}

class Printer {
  private readonly reading: SystemReading;
  private readonly passage: Passage;
  private readonly from: number;
  private readonly to: number;
  private readonly signs: readonly PrintedSign[];
  private readonly layout: Layout;
  private readonly fits: boolean;

  constructor(private readonly request: PrintRequest) {
    const { system, firstBar, lastBar } = request;
    this.reading = system.reading;
    this.signs = signsToPrint(system, firstBar, lastBar);
    this.passage = passageOf(system, firstBar, lastBar);
    this.from = this.passage.from;
    this.to = this.passage.to;
    const input = this.layoutInput();
    const left = request.columns === 'as they are' ? leaveAsItIs(input) : undefined;
    this.fits = request.columns !== 'as they are' || left !== undefined;
    this.layout = left ?? layOut(input);
  }

  private isHere({ column }: RowMark): boolean {
    return column >= this.passage.marksFrom && column < this.passage.marksEnd;
  }

  /** A mark stands behind its row's first bar line. */
  private columnOf({ column }: RowMark): number {
    return Math.max(column, this.from + 1);
  }

  private layoutInput(): LayoutInput {
    const { system, place, columns, floor } = this.request;
    const stringLines = system.lines.filter((line): line is StringLine => line.kind === 'string');
    const { columnTimes } = this.reading;
    const spare = new Set<number>();
    for (const column of secondDigitColumns(stringLines)) {
      const [own, next] = [columnTimes[column], columnTimes[column + 1]];
      if (own && next && own.n === next.n && own.d === next.d) spare.add(column);
    }
    const signs = new Set<number>();
    for (const { first, last } of this.signs) for (let c = first; c <= last; c++) signs.add(c);
    return {
      from: this.from,
      to: this.to,
      pieces: piecesOf(system, this.passage, place),
      marks: this.rowMarks(),
      spare,
      signs,
      roomy: columns === 'roomy',
      floor,
    };
  }

  private rowMarks(): LayoutInput['marks'] {
    return this.request.system.lines.flatMap((line, row) =>
      line.kind === 'row'
        ? this.marksOf(line).map(({ column, text, until }, i) => ({
            row,
            column,
            width: until === undefined ? widthOfText(text) : leastCover(line, text),
            touches: i === 0 || line.marks.some((other) => other.column + other.width === column),
          }))
        : [],
    );
  }

  /** The marks of a row that belong to the passage; what covers columns may have begun before it. */
  private marksOf(row: RowLine): PrintedMark[] {
    const first = this.reading.bars[this.request.firstBar]?.startColumn ?? 0;
    return row.marks.flatMap((mark): PrintedMark[] => {
      const covers = row.row === 'palm mute' || stretches(mark.text);
      const until = covers ? mark.column + mark.width : undefined;
      const text = this.markText(row, mark);
      if (this.isHere(mark)) return [{ text, column: this.columnOf(mark), until }];
      if (!covers || mark.column >= this.from || mark.column + mark.width <= first) return [];
      return [{ text, column: this.from + 1, until }];
    });
  }

  private markText(row: RowLine, mark: RowMark): string {
    return this.request.rewrite?.(row, mark) ?? mark.text;
  }

  print(): string[] | undefined {
    const { system, header } = this.request;
    if (!this.fits) return undefined;
    const strings = this.request.strings ?? header.tuning.strings.map((_, i) => i + 1);
    const prefix = new Prefixes(system.lines);
    const labels = this.labels(strings);
    const remarks = this.remarks(strings);
    const bodies = strings.map((number, i) => ({
      prefix: prefix.string(labels[i] ?? ''),
      body: this.stringBody(number, i),
      remark: remarks[i] ?? '',
    }));
    const lines: { prefix: string; body: string; remark: string }[] = [];
    const stringCount = system.lines.filter((line) => line.kind === 'string').length;
    let next = 0;
    system.lines.forEach((line) => {
      if (line.kind === 'string') {
        // The last of the old strings is followed by whatever strings the new tuning has more.
        const isLast = next === stringCount - 1;
        const upTo = isLast ? bodies.length : Math.min(next + 1, bodies.length);
        for (let k = Math.min(next, bodies.length); k < upTo; k++) {
          const body = bodies[k];
          if (body) lines.push(body);
        }
        next += 1;
      } else if (line.kind === 'row') {
        if (this.hasShareOf(line))
          lines.push({ prefix: prefix.row(line.word), body: this.rowBody(line), remark: '' });
      } else if (this.request.firstBar === 0) lines.push({ prefix: line.text, body: '', remark: '' });
    });
    const width = prefix.width(lines.filter((line) => line.body !== '').map((line) => line.prefix));
    return lines.map((line) =>
      line.body === ''
        ? line.prefix
        : padEnd(line.prefix, width) + line.body + (line.remark && ` ${line.remark}`),
    );
  }

  private at(column: number): number {
    const index = Math.max(0, Math.min(column - this.from, this.layout.columns.length - 1));
    return this.layout.columns[index] ?? 0;
  }

  /** The old line whose place a string's line takes: that of the same string, else the one as far from the top. */
  private lineOf(number: number, i: number): StringLine | undefined {
    const { system, keepLabels } = this.request;
    const at = this.reading.strings.find((string) => string.number === number)?.line;
    const same = at === undefined ? undefined : system.lines[at];
    if (keepLabels) return same?.kind === 'string' ? same : undefined;
    return system.lines.filter((line): line is StringLine => line.kind === 'string')[i];
  }

  private labels(strings: readonly number[]): string[] {
    const { header, system } = this.request;
    const written = system.lines.flatMap((line) => (line.kind === 'string' ? [line.label] : []));
    const octaves = written.some((label) => label.notes.some((note) => note.octave !== undefined));
    const labels = (withOctaves: boolean): string[] =>
      strings.map((number, i) => this.label(number, i, written, withOctaves));
    const plain = labels(octaves);
    if (octaves || strings.length === header.tuning.strings.length) return plain;
    // Where strings are left out the labels alone say which ones stand here.
    const fits = placesThatFit(plain.map(readLabel), header.tuning, 2);
    return fits.length === 1 ? plain : labels(true);
  }

  private label(number: number, i: number, written: readonly Label[], withOctaves: boolean): string {
    const { header, keepLabels } = this.request;
    const old = this.lineOf(number, i)?.label;
    if (keepLabels && old) return old.text;
    if (written.every((label) => label.number !== undefined)) return String(number);
    const usual = usualLabel(header.tuning, header.tuning.strings.length - number, withOctaves);
    // A course may be labelled by one of its notes.
    return written.some((label) => label.notes.length > 1) ? usual : (usual.split('/')[0] ?? usual);
  }

  /** What is written behind the lines; it goes with the end of the system, the last line taking what others leave. */
  private remarks(strings: readonly number[]): string[] {
    if (this.request.lastBar !== this.reading.bars.length - 1) return [];
    const lines = strings.map((number, i) => this.lineOf(number, i));
    const remarks = lines.map((line) => line?.remark?.text ?? '');
    const left = this.request.system.lines.flatMap((line) =>
      line.kind === 'string' && line.remark && !lines.includes(line) ? [line.remark.text] : [],
    );
    const last = remarks.length - 1;
    if (left.length > 0 && last >= 0)
      remarks[last] = [remarks[last], ...left].filter((text) => text !== '').join(' ');
    return remarks;
  }

  /** Whether a row has anything to say in these bars. */
  private hasShareOf(row: RowLine): boolean {
    const { firstBar, lastBar } = this.request;
    const whole = firstBar === 0 && lastBar === this.reading.bars.length - 1;
    return whole || row.row === 'count' || this.marksOf(row).length > 0;
  }

  private stringBody(number: number, i: number): string {
    const width = Math.max(this.layout.columns.at(-1) ?? 0, 1);
    const body = this.ground(number, width);
    const old = this.lineOf(number, i);
    for (const sign of this.signs) {
      const index = old ? this.request.system.lines.indexOf(old) : -1;
      const text = sign.texts.get(index) ?? sign.text;
      const full = sign.text;
      // A line whose sign is plain stands under the bar lines of the one with dots.
      const shift = full.startsWith(':') && !text.startsWith(':') ? 1 : 0;
      const start = this.at(sign.first) + shift;
      [...text].forEach((character, k) => (body[start + k] = character));
    }
    for (const { piece, start, text } of this.layout.placed) {
      if (piece.string === number) [...text].forEach((character, k) => (body[start + k] = character));
    }
    return body.join('');
  }

  /** What a string's pieces are written on: dashes, and, where columns stay, whatever could not be read. */
  private ground(number: number, width: number): string[] {
    const body = Array.from({ length: width }, () => '-');
    if (this.request.columns !== 'as they are') return body;
    const at = this.reading.strings.find((string) => string.number === number)?.line;
    const line = at === undefined ? undefined : this.request.system.lines[at];
    if (line?.kind !== 'string') return body;
    const pieces = this.layout.placed.filter(({ piece }) => piece.from === number);
    for (const token of line.tokens) {
      const here = token.column >= this.from && token.column + token.width <= this.to;
      const isRead = pieces.some(
        ({ piece: { was } }) =>
          token.column < was.column + was.text.length && was.column < token.column + token.width,
      );
      if (!here || isRead || token.kind === 'bar' || token.text.length !== token.width) continue;
      [...token.text].forEach((character, k) => (body[token.column - this.from + k] = character));
    }
    return body;
  }

  private rowBody(row: RowLine): string {
    const body: string[] = [];
    const write = (at: number, text: string): void => {
      while (body.length < at) body.push(' ');
      [...text].forEach((character, k) => (body[at + k] = character));
    };
    for (const bar of row.bars) {
      if (bar.column >= this.from && bar.column < this.to) write(this.at(bar.column), bar.text);
    }
    if (body[0] === undefined || body[0] === ' ') write(0, '|');
    for (const { text, column, until } of this.marksOf(row)) {
      const start = Math.max(1, this.at(column));
      const width =
        until === undefined ? text.length : Math.max(1, this.at(Math.min(until, this.to)) - start);
      const letters = lettersOf(text);
      if (until === undefined) write(start, text);
      // Each column that a palm mute covers counts, so that its letters stand only where they have room.
      else if (row.row === 'palm mute')
        write(start, (letters.length > width ? '' : letters).padEnd(width, '-'));
      else write(start, letters.padEnd(Math.max(width, leastCover(row, text)), '-'));
    }
    return Array.from(body, (character: string | undefined) => character ?? ' ').join('');
  }
}

/** A mark of a row as it is printed. */
interface PrintedMark {
  readonly text: string;
  /** The column, of the system as it was, whose place it takes. */
  readonly column: number;
  /** Past the last column that it covers, for a mark that grows with what it covers. */
  readonly until: number | undefined;
}

/** The least columns that a mark may be printed on: two dashes tell that it grows with what it covers. */
function leastCover({ row }: RowLine, text: string): number {
  const letters = widthOfText(lettersOf(text));
  return row === 'palm mute' ? 1 : letters + 2;
}

function lettersOf(text: string): string {
  return text.replace(/-+$/, '');
}

/** A label as a line would be read that begins with it. */
function readLabel(text: string): Label {
  const line = parseLine(`${text}|-`);
  return line.kind === 'string'
    ? line.label
    : { text, start: 0, end: text.length, number: undefined, notes: [] };
}

function padEnd(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - widthOfText(text)));
}

/** What stands before the first `|` of each kind of line. */
class Prefixes {
  private readonly gap: string;
  private readonly rowGap: string;
  /** The room that the lines left before their first `|`; 0 where they left no more than their labels need. */
  private readonly room: number;

  constructor(lines: readonly ParsedLine[]) {
    const prefixes = lines.flatMap((line) => {
      if (line.kind !== 'string' && line.kind !== 'row') return [];
      const end = line.kind === 'string' ? line.label.end : line.wordEnd;
      return [
        {
          row: line.kind === 'row',
          gap: line.bodyStart - end,
          width: widthOfText(line.text.slice(0, line.bodyStart)),
        },
      ];
    });
    const tight = (row: boolean): boolean =>
      prefixes.some((prefix) => prefix.row === row && prefix.gap === 0);
    // A label and its bar line stand as close together as they did.
    this.gap = tight(false) ? '' : ' ';
    this.rowGap = tight(true) ? '' : ' ';
    const least = Math.min(...prefixes.map(({ row, gap }) => gap - (row ? this.rowGap : this.gap).length));
    this.room = least > 0 || prefixes.some(({ row }) => row) ? Math.max(...prefixes.map((p) => p.width)) : 0;
  }

  string(label: string): string {
    return label + this.gap;
  }

  row(word: string): string {
    return word + this.rowGap;
  }

  /** As wide as it was where that is enough, so that systems stay in line with each other. */
  width(prefixes: readonly string[]): number {
    return Math.max(this.room, ...prefixes.map(widthOfText));
  }
}
