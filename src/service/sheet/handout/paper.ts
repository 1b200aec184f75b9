import { textWidth, wrapText } from './textWidth';

/** Where the next thing is put, in millimetres from the page's left and top edge. */
export interface Measure {
  readonly x: number;
  readonly width: number;
}

/**
 * One column of a page: things are put under one another, and `y` tells how far it has come. Everything is real text
 * in one size and black on white, so that it prints, can be selected, and is read aloud.
 */
export class Column {
  private readonly drawn: string[] = [];

  constructor(
    readonly measure: Measure,
    /** Millimetres from the top of the page. */
    public y: number,
    /** Size of the letters, millimetres. */
    readonly size: number,
  ) {}

  /** What was put so far, as SVG. */
  get svg(): string {
    return this.drawn.join('');
  }

  skip(lines: number): void {
    this.y += lines * this.size;
  }

  put(svg: string): void {
    this.drawn.push(svg);
  }

  heading(text: string): void {
    const size = this.size * 1.25;
    this.skip(1);
    for (const line of wrapText(text, this.measure.width, size, true)) {
      this.y += size * 1.15;
      this.put(textAt(line, this.measure.x, this.y, { size, bold: true }));
    }
    this.skip(0.35);
    const { x, width } = this.measure;
    this.put(`<path d='M${round(x)} ${round(this.y)}h${round(width)}' stroke='#000' stroke-width='0.2'/>`);
    this.skip(0.25);
  }

  /** A paragraph; with a mark before its first line, the others stand under the text. */
  paragraph(text: string, mark = '', bold = false): void {
    const indent = mark === '' ? 0 : Math.max(textWidth(mark) * this.size, this.size * 1.3);
    wrapText(text, this.measure.width - indent, this.size, bold).forEach((line, at) => {
      this.y += this.size * LINE;
      if (at === 0 && mark !== '') this.put(textAt(mark, this.measure.x, this.y, { size: this.size }));
      this.put(textAt(line, this.measure.x + indent, this.y, { size: this.size, bold }));
    });
  }

  /**
   * Rows in columns as wide as what stands in them; the last one is wrapped.
   * @param main indices of the rows that are set in bold
   */
  table(
    columns: readonly string[],
    rows: readonly (readonly string[])[],
    main: readonly number[] = [],
  ): void {
    const gap = this.size * 1.2;
    const widths = columns
      .slice(0, -1)
      .map((title, at) =>
        Math.max(
          textWidth(title, true) * this.size,
          ...rows.map((row, index) => textWidth(row[at] ?? '', main.includes(index)) * this.size),
        ),
      );
    const lefts = widths.reduce((sums, width) => [...sums, (sums.at(-1) ?? 0) + width + gap], [0]);
    const last = columns.length - 1;
    const room = this.measure.width - (lefts[last] ?? 0);
    for (const [at, row] of [columns, ...rows].entries()) {
      const bold = at === 0 || main.includes(at - 1);
      const lines = wrapText(row[last] ?? '', room, this.size, bold);
      this.y += this.size * LINE;
      row.slice(0, -1).forEach((cell, column) => {
        const x = this.measure.x + (lefts[column] ?? 0);
        this.put(textAt(cell, x, this.y, { size: this.size, bold }));
      });
      lines.forEach((line, next) => {
        if (next > 0) this.y += this.size * LINE;
        this.put(textAt(line, this.measure.x + (lefts[last] ?? 0), this.y, { size: this.size, bold }));
      });
    }
  }
}

/** From one line to the next, in sizes of the letters. */
const LINE = 1.35;

/** One line of text; its left end, middle or right end stands at `x`, its foot at `y`. */
export function textAt(
  text: string,
  x: number,
  y: number,
  how: { readonly size: number; readonly bold?: boolean; readonly anchor?: 'start' | 'middle' | 'end' },
): string {
  if (text === '') return '';
  const weight = how.bold === true ? " font-weight='700'" : '';
  const anchor = how.anchor === undefined ? '' : ` text-anchor='${how.anchor}'`;
  return `<text x='${round(x)}' y='${round(y)}' font-size='${round(how.size)}'${weight}${anchor}>${escaped(text)}</text>`;
}

/** Millimetres to a hundredth: a printer is no finer. */
export function round(value: number): number {
  return Math.round(value * 100) / 100;
}

/** Text as it may stand in SVG. */
export function escaped(text: string): string {
  return text.replace(/[&<>]/g, (sign) => (sign === '&' ? '&amp;' : sign === '<' ? '&lt;' : '&gt;'));
}
