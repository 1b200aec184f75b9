import { NECK_SHIFT, PICTURE_COLOURS } from '../../grip/gripPicture';
import type { HandoutContent, HandoutShape } from './handoutContent';
import { Column, escaped, round, textAt } from './paper';
import { textWidth } from './textWidth';

/** A4 portrait, millimetres (ISO 216), and the margin that printers leave. */
const PAPER = { width: 210, height: 297, margin: 14 } as const;
const INNER = PAPER.width - 2 * PAPER.margin;
const GAP = 8;
/** Letters of the running text, millimetres; the first is about 10 points. Smaller only where a page would not do. */
const LARGEST = 3.5;
const SMALLEST = 1.9;
const SMALLER = 0.1;
/** The most that one shape's picture is high, and the room that is left where they stand in two rows, millimetres. */
const PICTURE_HEIGHT = 32;
const TWO_ROWS = 84;
/** What a row takes beside its pictures, in sizes of the letters. */
const LABELS = 5;

/**
 * The handout as one page: A4 portrait, black on white, real text in a plain font of the system, with a title and a
 * description. The letters are as large as the page allows; nothing overlaps and nothing runs off.
 */
export function handoutSvg(content: HandoutContent): string {
  let page = laidOut(content, LARGEST);
  for (
    let size = LARGEST - SMALLER;
    page.y > PAPER.height - PAPER.margin && size >= SMALLEST;
    size -= SMALLER
  )
    page = laidOut(content, size);
  const { width, height } = PAPER;
  const description = `One page about a tuning: ${content.facts.join(' ')} Strings, retuning, barres and shapes.`;
  return [
    `<svg xmlns='http://www.w3.org/2000/svg' width='${width}mm' height='${height}mm' viewBox='0 0 ${width} ${height}' role='img'>`,
    `<title>${escaped(content.title)}</title><desc>${escaped(description)}</desc>`,
    `<rect width='${width}' height='${height}' fill='#fff'/>`,
    `<g font-family='Helvetica, Arial, "Liberation Sans", sans-serif' fill='#000'>${page.svg}</g></svg>`,
  ].join('');
}

interface Laid {
  readonly svg: string;
  /** How far down the page it comes, millimetres. */
  readonly y: number;
}

function laidOut(content: HandoutContent, size: number): Laid {
  const { margin: x } = PAPER;
  const head = new Column({ x, width: INNER }, x, size);
  title(head, content.title);
  for (const fact of content.facts) head.paragraph(fact);
  head.heading(content.strings.heading);
  head.table(content.strings.columns, content.strings.rows);

  const narrow = (INNER - GAP) / 2;
  const left = new Column({ x, width: narrow }, head.y, size);
  left.heading(content.barres.heading);
  left.table(content.barres.columns, content.barres.rows, content.barres.main);
  left.skip(0.4);
  left.paragraph(content.barres.remark);

  const right = new Column({ x: x + narrow + GAP, width: narrow }, head.y, size);
  retuning(right, content.retuning);
  // The lists go where there is room.
  for (const list of content.lists) {
    const column = left.y <= right.y ? left : right;
    column.heading(list.heading);
    for (const { text, below } of list.lines) column.paragraph(text, below ? '–' : '');
  }
  const foot = new Column({ x, width: INNER }, Math.max(left.y, right.y), size);
  shapes(foot, content.shapes);
  return { svg: head.svg + left.svg + right.svg + foot.svg, y: foot.y };
}

function title(column: Column, text: string): void {
  // One line: a long name is set smaller.
  const size = Math.min(column.size * 2.1, column.measure.width / textWidth(text, true));
  column.y += size * 0.8;
  column.put(textAt(text, column.measure.x, column.y, { size, bold: true }));
  column.skip(0.5);
}

function retuning(column: Column, { heading, steps, notes, cautions }: HandoutContent['retuning']): void {
  column.heading(heading);
  steps.forEach((step, at) => column.paragraph(step, `${at + 1}.`));
  if (steps.length > 0 && notes.length > 0) column.skip(0.4);
  for (const note of notes) column.paragraph(note);
  if (cautions.length === 0) return;
  column.skip(0.8);
  const top = column.y;
  const inset = column.size * 0.7;
  const { x, width } = column.measure;
  const box = new Column({ x: x + inset, width: width - 2 * inset }, top, column.size);
  box.skip(0.3);
  box.paragraph('Caution', '', true);
  for (const caution of cautions) box.paragraph(caution);
  box.skip(0.7);
  column.put(box.svg);
  column.put(
    `<rect x='${round(x)}' y='${round(top)}' width='${round(width)}' height='${round(box.y - top)}' fill='none' stroke='#000' stroke-width='0.3'/>`,
  );
  column.y = box.y;
}

function shapes(column: Column, { heading, shapes: all }: HandoutContent['shapes']): void {
  if (all.length === 0) return;
  column.heading(heading);
  const left = PAPER.height - PAPER.margin - column.y;
  const labels = column.size * LABELS;
  const rows = left > TWO_ROWS ? 2 : 1;
  const height = rows === 1 ? PICTURE_HEIGHT : left / 2 - labels;
  const perRow = Math.ceil(all.length / rows);
  for (let first = 0; first < all.length; first += perRow)
    shapeRow(column, all.slice(first, first + perRow), Math.min(height, PICTURE_HEIGHT));
}

/** Chords side by side: the name, the picture, the frets. */
function shapeRow(column: Column, row: readonly HandoutShape[], height: number): void {
  const { x, width } = column.measure;
  const cell = width / row.length;
  const top = column.y + column.size * 2.2;
  const pictures = row.map((shape) => sized(shape, cell * 0.92, height));
  const tallest = Math.max(0, ...pictures.map((picture) => picture?.height ?? 0));
  row.forEach((shape, at) => {
    const middle = x + cell * (at + 0.5);
    const picture = pictures[at];
    const name = { size: column.size * 1.2, bold: true, anchor: 'middle' } as const;
    column.put(textAt(shape.chord, middle, top - column.size * 0.5, name));
    if (picture)
      column.put(
        `<svg x='${round(middle - picture.width / 2 - picture.shift)}' y='${round(top)}' width='${round(picture.width)}' height='${round(picture.height)}' viewBox='${picture.box}'>${picture.inner}</svg>`,
      );
    const size = Math.min(column.size, (cell * 0.96) / Math.max(1, textWidth(shape.text)));
    column.put(textAt(shape.text, middle, top + tallest + column.size * 1.3, { size, anchor: 'middle' }));
  });
  column.y = top + tallest + column.size * 2.5;
}

interface Sized {
  readonly width: number;
  readonly height: number;
  /** How far left it is to stand so that its neck is in the middle. */
  readonly shift: number;
  readonly box: string;
  readonly inner: string;
}

/** A picture of a shape fitted into a room, in black; undefined where there is none. */
function sized({ svg }: HandoutShape, width: number, height: number): Sized | undefined {
  const read =
    svg === undefined ? null : /^<svg [^>]*?width='([\d.]+)' height='([\d.]+)'[^>]*>(.*)<\/svg>$/s.exec(svg);
  const [own, tall] = [Number(read?.[1]), Number(read?.[2])];
  if (!read || !(own > 0) || !(tall > 0)) return undefined;
  const scale = Math.min(width / own, height / tall);
  return {
    width: own * scale,
    height: tall * scale,
    shift: NECK_SHIFT * scale,
    box: `0 0 ${own} ${tall}`,
    inner: (read[3] ?? '').replaceAll(PICTURE_COLOURS.dot, '#000').replaceAll(PICTURE_COLOURS.line, '#000'),
  };
}
