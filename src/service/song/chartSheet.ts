import type { ChartChord, ChordChart } from './songAnswer';

/*
 * Lengths in CSS pixels. Six pictures of a six-string shape stand side by side on an A4 sheet at 96 pixels an inch
 * (ISO 216: 210 mm, 794 pixels, less the margins).
 */
const MARGIN = 24;
const SHEET = 794;
const HEAD = 30;
const NAME = 28;
const SOUNDS = 18;
const LINE = 17;
const GAP = 14;
/** A picture's own room at its left, so that names stand over its strings. */
const LEFT = 34;
/** Columns of a line under a picture, by its width: 6.2 pixels a letter of 12. */
const LETTER = 6.4;

/** Dark on a ground of its own where it is a file; where it stands in a page, that page's colours are to be set. */
const INK = '#222';
const GROUND = '#fff';

interface Cell {
  readonly chord: ChartChord;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly string[];
}

/**
 * All shapes of a chart on one sheet, in rows: each with its name over it and its bars under it. A well-formed SVG document
 * without script, link or style sheet; text is `currentColor`, and its ground is a rectangle of the class `ground`, so
 * that a page can show it in its own colours.
 */
export function chartSheet({ title, tunings, chords }: Pick<ChordChart, 'title' | 'tunings' | 'chords'>): {
  readonly svg: string;
  readonly alt: string;
} {
  const several = tunings.length > 1;
  const capo = chords.some(({ sounds }) => sounds !== null);
  const cells = chords.map((chord) => cellOf(chord, several, capo));
  const heading = [title ?? 'Chords', ...(several ? [] : tunings)];
  const width = Math.max(SHEET, ...cells.map((cell) => cell.width + 2 * MARGIN));
  const rows = rowsOf(cells, width - 2 * MARGIN);
  let y = MARGIN;
  const parts: string[] = [];
  heading.forEach((text, i) => {
    y += i === 0 ? HEAD : LINE;
    parts.push(textAt(MARGIN, y - 6, text, i === 0 ? 20 : 13, i === 0));
  });
  y += GAP;
  for (const row of rows) {
    let x = MARGIN;
    for (const cell of row) {
      parts.push(drawn(cell, x, y, capo));
      x += cell.width;
    }
    y += Math.max(...row.map((cell) => cell.height)) + GAP;
  }
  const height = y + MARGIN - GAP;
  const alt = `Chord chart: ${chords.map(({ name, shape }) => `${name} ${shape ? shape.text : 'without a shape'}`).join('; ')}.`;
  const svg = [
    `<svg xmlns='http://www.w3.org/2000/svg' role='img' width='${width}' height='${height}' viewBox='0 0 ${width} ${height}' color='${INK}'>`,
    `<title>${escaped(alt)}</title>`,
    `<rect class='ground' width='${width}' height='${height}' fill='${GROUND}'/>`,
    ...parts,
    '</svg>',
  ].join('');
  return { svg, alt };
}

function cellOf(chord: ChartChord, several: boolean, capo: boolean): Cell {
  const size = sizeOf(chord.shape?.svg ?? '');
  const width = Math.max(size.width, LEFT + chord.name.length * 12 + 12);
  const letters = Math.max(8, Math.floor((width - LEFT) / LETTER));
  const bars = `${chord.part === null ? '' : `${chord.part}, `}${chord.bars.length === 1 ? 'bar' : 'bars'} ${chord.bars.join(', ')}`;
  const lines = [
    ...wrapped(bars, letters, 2),
    ...(several ? wrapped(chord.tuning, letters, 2) : []),
    ...(chord.shape?.leftOut ? wrapped(`without ${chord.shape.leftOut}`, letters, 2) : []),
    ...(chord.shape === null ? ['no shape'] : []),
  ];
  const height = NAME + (capo ? SOUNDS : 0) + size.height + lines.length * LINE + 6;
  return { chord, width, height, lines };
}

function drawn({ chord, lines }: Cell, x: number, y: number, capo: boolean): string {
  const { name, sounds, shape } = chord;
  const left = x + LEFT;
  const top = y + NAME + (capo ? SOUNDS : 0);
  const size = sizeOf(shape?.svg ?? '');
  return [
    textAt(left, y + NAME - 8, name, 19, true),
    capo && sounds !== null ? textAt(left, y + NAME + SOUNDS - 8, `sounds ${sounds}`, 12, false) : '',
    shape ? shape.svg.replace('<svg ', `<svg x='${x}' y='${top}' `) : '',
    ...lines.map((line, i) => textAt(left, top + size.height + 14 + i * LINE, line, 12, false)),
  ].join('');
}

function sizeOf(svg: string): { readonly width: number; readonly height: number } {
  const width = Number(/ width='([\d.]+)'/.exec(svg)?.[1] ?? 0);
  const height = Number(/ height='([\d.]+)'/.exec(svg)?.[1] ?? 0);
  return { width, height };
}

/** Cells side by side as long as there is room; all as wide as the widest, so that they stand in columns. */
function rowsOf(cells: readonly Cell[], room: number): Cell[][] {
  const wide = Math.max(1, ...cells.map(({ width }) => width));
  const columns = Math.max(1, Math.floor(room / wide));
  const rows: Cell[][] = [];
  cells.forEach((cell, i) => {
    const even = { ...cell, width: Math.floor(room / columns) };
    if (i % columns === 0) rows.push([even]);
    else rows.at(-1)?.push(even);
  });
  return rows;
}

/** Words in lines of some letters; what is too long for the last one is cut. */
function wrapped(text: string, letters: number, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), `${lines[most - 1] ?? ''} …`];
}

function textAt(x: number, y: number, text: string, size: number, bold: boolean): string {
  const weight = bold ? " font-weight='700'" : '';
  return `<text x='${x}' y='${y}' fill='currentColor' font-family='sans-serif' font-size='${size}'${weight}>${escaped(text)}</text>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>]/g, (sign) => (sign === '&' ? '&amp;' : sign === '<' ? '&lt;' : '&gt;'));
}
