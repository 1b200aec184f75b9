import type { Header } from '../header';
import { usualLabel } from '../labels';
import type { ParsedLine, RowLine, RowMark, StringLine } from '../parsedLine';
import type { SystemReading } from '../reading';
import { secondDigitColumns } from '../systemReading';
import type { System } from '../tabDocument';
import { widthOfText } from '../columns';
import { signsToPrint, type PrintedSign } from './signs';
import { layOut, type Layout, type LayoutInput } from './layout';
import { piecesOf, type PlaceNote } from './pieces';

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
  /** Whether every second digit gets a column of its own. */
  readonly roomy: boolean;
  /** The least new column of an old one, counted from the opening sign; to lay a passage out by its times. */
  readonly floor?: (column: number) => number;
  /** Strings to print, in the new tuning, top to bottom; all of them when left out. */
  readonly strings?: readonly number[];
  /** Whether lines keep their labels as written (the tuning stays). */
  readonly keepLabels: boolean;
}

/** Lines that say what the request asks for, in the order of the system's own lines. */
export function printSystem(request: PrintRequest): string[] {
  return new Printer(request).print();
}

class Printer {
  private readonly reading: SystemReading;
  private readonly from: number;
  private readonly to: number;
  private readonly signs: readonly PrintedSign[];
  private readonly layout: Layout;

  constructor(private readonly request: PrintRequest) {
    const { system, firstBar, lastBar } = request;
    this.reading = system.reading;
    this.signs = signsToPrint(system, firstBar, lastBar);
    this.from = this.signs[0]?.first ?? 0;
    const width = Math.max(
      0,
      ...system.lines.map((line) => (line.kind === 'string' || line.kind === 'row' ? line.width : 0)),
    );
    const whole = lastBar === this.reading.bars.length - 1;
    this.to = whole ? width : (this.signs.at(-1)?.last ?? width - 1) + 1;
    this.layout = layOut(this.layoutInput());
  }

  private layoutInput(): LayoutInput {
    const { system, place, roomy, floor } = this.request;
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
      pieces: piecesOf(system, this.from, this.to, place),
      marks: this.rowMarks(),
      spare,
      signs,
      roomy,
      floor: floor ?? (() => 0),
    };
  }

  private rowMarks(): LayoutInput['marks'] {
    return this.request.system.lines.flatMap((line, row) =>
      line.kind === 'row'
        ? line.marks
            .filter((mark) => mark.column >= this.from && mark.column < this.to)
            .map((mark, i) => ({
              row,
              column: mark.column,
              width: stretches(mark.text) ? 1 : widthOfText(this.markText(line, mark)),
              touches: i === 0 || line.marks.some((other) => other.column + other.width === mark.column),
            }))
        : [],
    );
  }

  private markText(row: RowLine, mark: RowMark): string {
    return this.request.rewrite?.(row, mark) ?? mark.text;
  }

  print(): string[] {
    const { system, header } = this.request;
    const strings = this.request.strings ?? header.tuning.strings.map((_, i) => i + 1);
    const prefix = new Prefixes(system.lines);
    const bodies = strings.map((number, i) => ({
      prefix: prefix.string(this.label(number, i)),
      body: this.stringBody(number, i),
      remark: this.remark(number, i),
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
        lines.push({ prefix: prefix.row(line.word), body: this.rowBody(line), remark: '' });
      } else lines.push({ prefix: line.text, body: '', remark: '' });
    });
    const width = Math.max(
      ...lines.filter((line) => line.body !== '').map((line) => widthOfText(line.prefix)),
    );
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

  private label(number: number, i: number): string {
    const { header, keepLabels } = this.request;
    const old = this.lineOf(number, i)?.label;
    if (keepLabels && old) return old.text;
    const labels = this.request.system.lines.flatMap((line) => (line.kind === 'string' ? [line.label] : []));
    if (labels.every((label) => label.number !== undefined)) return String(number);
    return usualLabel(
      header.tuning,
      header.tuning.strings.length - number,
      labels.some((label) => label.notes.some((note) => note.octave !== undefined)),
    );
  }

  private remark(number: number, i: number): string {
    const whole = this.request.lastBar === this.reading.bars.length - 1;
    return whole ? (this.lineOf(number, i)?.remark?.text ?? '') : '';
  }

  private stringBody(number: number, i: number): string {
    const width = Math.max(this.layout.columns.at(-1) ?? 0, 1);
    const body = Array.from({ length: width }, () => '-');
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
    for (const mark of row.marks) {
      if (mark.column < this.from || mark.column >= this.to) continue;
      const start = this.at(mark.column);
      const text = this.markText(row, mark);
      const stretched = stretches(mark.text)
        ? this.at(Math.min(mark.column + mark.width, this.to)) - start
        : 0;
      write(start, text + '-'.repeat(Math.max(0, stretched - text.length)));
    }
    return body.map((character) => character ?? ' ').join('');
  }
}

/** A mark that covers the columns below it, such as `PM----`, grows with them. */
function stretches(text: string): boolean {
  return /--$/.test(text);
}

function padEnd(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - widthOfText(text)));
}

/** What stands before the first `|` of each kind of line. */
class Prefixes {
  private readonly gap: string;

  constructor(lines: readonly ParsedLine[]) {
    // A label and its bar line stand as close together as they did.
    const first = lines.find((line) => line.kind === 'string');
    const prefix = first?.kind === 'string' ? first.text.slice(first.label.end, first.bodyStart) : ' ';
    this.gap = prefix === '' ? '' : ' ';
  }

  string(label: string): string {
    return label + this.gap;
  }

  row(word: string): string {
    return word + ' ';
  }
}
