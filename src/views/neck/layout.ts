import type { NeckBoard } from '../../service/neck/neckAnswer';

/** The narrowest fret, in pixels, when the neck lies: a label such as `bb7` has to stand in it. */
const NARROWEST = 28;
/** The lowest fret when it stands. */
const LOWEST = 22;
/** Room for each string: when the neck lies, and at most and at least when it stands. */
const STRING_ROOM = 28;
const WIDEST_STRING = 52;
const NARROWEST_STRING = 27;
/** Before the nut, for the open strings. */
const OPEN_ROOM = 34;
/** For the numbers of frets and strings. */
const MARGIN = 24;
/** A page at least this wide has a lying neck. */
export const WIDE = 560;

/** How the neck lies in the page: from frets and strings to pixels. One direction is along the neck, one across. */
export interface NeckLayout {
  /** The nut is on top; else it is at the left, or at the right for a left-handed player. */
  readonly upright: boolean;
  readonly leftHanded: boolean;
  /** Pixels along the neck and across it, numbers included. */
  readonly length: number;
  readonly breadth: number;
  /** Along: from the page's edge to the wire of a cell. */
  readonly wire: (cell: number) => number;
  /** Along: where a cell begins and ends; the cell of the nut or full capo lies before it. */
  readonly span: (cell: number) => readonly [number, number];
  /** Across: the middle of a string. */
  readonly string: (number: number) => number;
  readonly room: number;
}

/** @param width of the page, in pixels */
export function layOut(board: NeckBoard, width: number, leftHanded: boolean): NeckLayout {
  const upright = width < WIDE;
  const { wires, first, last, strings } = board;
  const start = wires[0] ?? 0;
  const whole = (wires.at(-1) ?? 0) - start;
  const narrowest = wires.length < 2 ? 1 : (wires.at(-1) ?? 0) - (wires.at(-2) ?? 0);
  const least = (upright ? LOWEST : NARROWEST) / narrowest;
  const wanted = upright ? least : (width - MARGIN - OPEN_ROOM - 2) / (whole || 1);
  const scale = Math.max(least, wanted);
  const fitting = (width - MARGIN) / Math.max(1, strings.length);
  const room = upright ? Math.min(WIDEST_STRING, Math.max(NARROWEST_STRING, fitting)) : STRING_ROOM;
  const wire = (cell: number): number => {
    const share = wires[Math.min(cell, last) - first] ?? start;
    return Math.round(MARGIN + OPEN_ROOM + (share - start) * scale);
  };
  return {
    upright,
    leftHanded,
    length: wire(last) + 2,
    breadth: MARGIN + Math.round(room * strings.length),
    wire,
    span: (cell) => (cell <= first ? [MARGIN, MARGIN + OPEN_ROOM] : [wire(cell - 1), wire(cell)]),
    string: (number) => {
      // Standing, string 1 is at the right; lying, it is on top, as in the tab.
      const fromFirst = upright && !leftHanded ? strings.length - number : number - 1;
      return Math.round(MARGIN + (fromFirst + 0.5) * room);
    },
    room,
  };
}

/** A box in the page. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The box that lies along the neck from one point to another, and across it as far. */
export function boxOf(
  { upright, leftHanded, length }: NeckLayout,
  [from, to]: readonly [number, number],
  [low, high]: readonly [number, number],
): Box {
  if (upright) return { left: low, top: from, width: high - low, height: to - from };
  return { left: leftHanded ? length - to : from, top: low, width: to - from, height: high - low };
}

export function placeBox(layout: NeckLayout, string: number, cell: number): Box {
  const middle = layout.string(string);
  const half = layout.room / 2;
  return boxOf(layout, layout.span(cell), [middle - half, middle + half]);
}
