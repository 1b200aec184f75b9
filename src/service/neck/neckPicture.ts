import type { NeckBoard, NeckMoment, NeckPictureRequest, NeckPlace, NeckString } from './neckAnswer';

/** The narrowest fret, in pixels: a label such as `bb7` has to stand in it. */
const NARROWEST = 26;
/** Between strings, when the neck lies. */
const STRING_ROOM = 26;
/** Between strings, when it stands: labels are wider than high. */
const STRING_ROOM_UPRIGHT = 36;
/** Before the nut, where the open strings are named. */
const OPEN_ROOM = 44;
const EDGE = 18;
const NUMBERS_ROOM = 22;
/** Of the heading. */
const LINE = 17;
const LEAST_WIDTH = 300;
const FONT = 'font-family="system-ui, sans-serif"';

/** A picture of a neck as an SVG document of its own, black on white, for print. */
export interface NeckDrawing extends Pick<NeckPictureRequest, 'labels' | 'leftHanded' | 'upright' | 'every'> {
  readonly board: NeckBoard;
  readonly moment: NeckMoment;
}

/**
 * The neck with true fret spacing: names, degrees or intervals as text, the root bold in a box, what sounds at the
 * cursor filled, what rings there with a dashed edge. No colour means anything. It lies with string 1 on top, or stands
 * with the nut on top; for a left-handed player it is turned left to right.
 */
export function neckPicture(drawing: NeckDrawing): string {
  const { board, upright = false } = drawing;
  const { name, notes } = board.tones;
  const title = [board.title, name].filter(Boolean).join(' · ');
  const told = [notes.join(' '), ...board.facts].filter(Boolean);
  const { width, above } = measures(drawing);
  const heading = [...wrapped([board.title, name], width, 8.2), ...wrapped(told, width, 6.2)];
  const titleLines = wrapped([board.title, name], width, 8.2).length;
  const place = layOut(drawing, above + heading.length * LINE);
  const words = heading.map((text, at) => {
    const look = at < titleLines ? 'font-size="14" font-weight="600"' : 'font-size="11" fill="#444"';
    return `<text x="${EDGE}" y="${18 + at * LINE}" ${look}>${escaped(text)}</text>`;
  });
  const lines = [...wires(board, place), ...strings(board, place, upright)].join('');
  const described = escaped(`${told.join('. ')}. ${drawing.moment.words}.`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 ${place.width} ${place.height}" width="${place.width}" height="${place.height}">`,
    `<title>${escaped(title)}</title><desc>${described}</desc>`,
    '<rect width="100%" height="100%" fill="#fff"/>',
    `<g ${FONT}>${words.join('')}</g>`,
    `<g stroke="#777" stroke-linecap="round" fill="none">${lines}</g>`,
    `<g ${FONT} font-size="12" text-anchor="middle">${labels(drawing, place).join('')}</g>`,
    `<g ${FONT} font-size="11" fill="#444" text-anchor="middle">${numbers(board, place, upright).join('')}</g>`,
    '</svg>\n',
  ].join('\n');
}

/** Phrases on as few lines as hold them, by the width that a letter takes at most, in pixels. */
function wrapped(phrases: readonly string[], width: number, letter: number): readonly string[] {
  const room = Math.floor((width - EDGE * 2) / letter);
  const lines: string[] = [];
  for (const phrase of phrases.filter(Boolean)) {
    const last = lines.at(-1);
    const longer = last === undefined ? phrase : `${last} · ${phrase}`;
    if (last !== undefined && longer.length <= room) lines[lines.length - 1] = longer;
    else lines.push(...byWords(phrase, room));
  }
  return lines;
}

function byWords(phrase: string, room: number): readonly string[] {
  const lines: string[] = [''];
  for (const word of phrase.split(' ')) {
    const longer = `${lines.at(-1) ?? ''} ${word}`.trim();
    if (longer.length <= room || lines.at(-1) === '') lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** From the neck's own measures to the picture's. */
interface Layout {
  readonly width: number;
  readonly height: number;
  /** A point by its way along the neck, in pixels from the nut, and its string. */
  readonly at: (along: number, string: number) => { readonly x: number; readonly y: number };
  /** Pixels from the nut or capo to the wire of a cell. */
  readonly wire: (cell: number) => number;
}

/** How wide the picture is, and what stands above the neck beside the heading. */
function measures({ board, upright = false }: NeckDrawing): {
  readonly width: number;
  readonly above: number;
} {
  const { strings, wires } = board;
  const along = OPEN_ROOM + ((wires.at(-1) ?? 0) - (wires[0] ?? 0)) * scaleOf(board) + 6;
  const across = (upright ? STRING_ROOM_UPRIGHT : STRING_ROOM) * strings.length + NUMBERS_ROOM;
  return { width: Math.ceil(Math.max((upright ? across : along) + EDGE * 2, LEAST_WIDTH)), above: 10 };
}

/** Pixels of the whole scale length: the narrowest fret that is shown has room for its labels. */
function scaleOf({ wires }: NeckBoard): number {
  return wires.length < 2 ? NARROWEST : NARROWEST / ((wires.at(-1) ?? 0) - (wires.at(-2) ?? 0));
}

function layOut(drawing: NeckDrawing, top: number): Layout {
  const { board, upright = false, leftHanded = false } = drawing;
  const { wires, first, strings } = board;
  const start = wires[0] ?? 0;
  const scale = scaleOf(board);
  const wire = (cell: number): number => ((wires[cell - first] ?? start) - start) * scale;
  const room = upright ? STRING_ROOM_UPRIGHT : STRING_ROOM;
  const length = OPEN_ROOM + wire(board.last) + 6;
  const { width } = measures(drawing);
  const shown = {
    width,
    height: Math.ceil(top + (upright ? length : room * strings.length + NUMBERS_ROOM) + 6),
  };
  return {
    ...shown,
    wire,
    at(along, string) {
      const way = OPEN_ROOM + along;
      // Standing, string 1 is at the right; lying, it is on top.
      const side = upright ? strings.length - string : string - 1;
      if (!upright)
        return {
          x: leftHanded ? EDGE + length - way : EDGE + way,
          y: top + room * (side + 0.5),
        };
      const x = EDGE + NUMBERS_ROOM + room * ((leftHanded ? strings.length - 1 - side : side) + 0.5);
      return { x, y: top + way };
    },
  };
}

function wires(board: NeckBoard, { at, wire }: Layout): string[] {
  const cells = board.numbers.map((_, index) => board.first + index);
  const drawn = cells.map((cell) => {
    // Beside a string that begins up the neck the fingerboard is narrower.
    const there = board.strings.filter(({ begins }) => begins <= Math.max(cell, board.first));
    const [low, high] = [Math.max(...numbersOf(there)), Math.min(...numbersOf(there))];
    return line(at(wire(cell), low), at(wire(cell), high), cell === board.first ? 4 : 1);
  });
  const { capo } = board;
  if (capo && capo.fret > board.first && capo.fret <= board.last) {
    const along = (wire(capo.fret - 1) + wire(capo.fret) * 3) / 4;
    drawn.push(line(at(along, capo.from), at(along, capo.to), 6));
  }
  return drawn;
}

function strings(board: NeckBoard, { at, wire }: Layout, upright: boolean): string[] {
  return board.strings.flatMap(({ number, course, begins }) =>
    (course ? [-2, 2] : [0]).map((aside) => {
      const move = upright ? { x: aside, y: 0 } : { x: 0, y: aside };
      const from = at(wire(Math.max(begins, board.first)), number);
      const to = at(wire(board.last), number);
      return line(moved(from, move), moved(to, move), 1);
    }),
  );
}

function labels(drawing: NeckDrawing, { at, wire }: Layout): string[] {
  const { board } = drawing;
  return board.strings.flatMap((string) =>
    string.places.flatMap((place) => {
      const text = labelOf(place, drawing);
      const how = stateOf(string, place, drawing.moment);
      if (text === '' || (!place.marked && drawing.every !== true && !how)) return [];
      const along =
        place.cell === board.first ? -OPEN_ROOM / 2 + 4 : (wire(place.cell - 1) + wire(place.cell)) / 2;
      const { x, y } = at(along, string.number);
      const half = Math.max(9, text.length * 4.2 + 3);
      const edge = how === 'rings' ? ' stroke-dasharray="3 2"' : '';
      const filled = how === 'struck' || how === 'harmonic';
      const stroke = place.root || how ? ' stroke="#000"' : '';
      return [
        `<rect x="${fixed(x - half)}" y="${fixed(y - 9)}" width="${fixed(half * 2)}" height="18" rx="${how ? 9 : 2}" fill="${filled ? '#000' : '#fff'}"${stroke}${edge}/>`,
        `<text x="${fixed(x)}" y="${fixed(y + 4.2)}" fill="${filled ? '#fff' : '#000'}"${place.root ? ' font-weight="700"' : ''}>${escaped(text)}</text>`,
      ];
    }),
  );
}

function labelOf({ note, degree, interval }: NeckPlace, { labels = 'notes' }: NeckDrawing): string {
  if (labels === 'degrees') return degree?.short ?? '';
  return labels === 'intervals' ? interval.short : note;
}

function stateOf({ number }: NeckString, { fret }: NeckPlace, { sounding }: NeckMoment): string | undefined {
  return sounding.find((one) => one.string === number && one.fret === fret)?.how;
}

function numbers(board: NeckBoard, { at, wire }: Layout, upright: boolean): string[] {
  const last = board.strings.length;
  return board.numbers.slice(1).map((number, index) => {
    const cell = board.first + index + 1;
    const along = (wire(cell - 1) + wire(cell)) / 2;
    if (upright) return `<text x="${EDGE + 8}" y="${fixed(at(along, 1).y + 4)}">${number}</text>`;
    const { x, y } = at(along, last);
    return `<text x="${fixed(x)}" y="${fixed(y + 26)}">${number}</text>`;
  });
}

interface Point {
  readonly x: number;
  readonly y: number;
}

function line(from: Point, to: Point, width: number): string {
  return `<path stroke-width="${width}" d="M${fixed(from.x)} ${fixed(from.y)}L${fixed(to.x)} ${fixed(to.y)}"/>`;
}

function moved(point: Point, by: Point): Point {
  return { x: point.x + by.x, y: point.y + by.y };
}

function numbersOf(strings: readonly NeckString[]): readonly number[] {
  return strings.map(({ number }) => number);
}

function fixed(value: number): string {
  return String(Math.round(value * 10) / 10);
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
