import type { JSX } from 'preact';
import type { NeckBoard } from '../../service/neck/neckAnswer';
import type { NeckLayout } from './layout';

/** Strings, frets, nut and capo, as lines under the labels. */
export function Lines({
  board,
  layout,
}: {
  readonly board: NeckBoard;
  readonly layout: NeckLayout;
}): JSX.Element {
  const { upright, length, breadth } = layout;
  return (
    <svg
      class="lines"
      aria-hidden="true"
      width={upright ? breadth : length}
      height={upright ? length : breadth}
    >
      <path class="wires" d={wirePath(board, layout)} />
      <path class="strings" d={stringPath(board, layout)} />
      <path class="nut" d={acrossAt(board, layout, board.first, layout.wire(board.first))} />
      <path class="capo" d={capoPath(board, layout)} />
    </svg>
  );
}

function wirePath(board: NeckBoard, layout: NeckLayout): string {
  return board.numbers
    .slice(1)
    .map((_, at) => board.first + at + 1)
    .map((cell) => acrossAt(board, layout, cell, layout.wire(cell)))
    .join('');
}

/** From the outermost string to the other that the neck has at a cell: beside a short string it is narrower. */
function acrossAt({ strings, first }: NeckBoard, layout: NeckLayout, cell: number, along: number): string {
  const there = strings.filter(({ begins }) => begins <= Math.max(cell, first)).map(({ number }) => number);
  if (there.length === 0) return '';
  return line(layout, [along, layout.string(Math.max(...there))], [along, layout.string(Math.min(...there))]);
}

function stringPath({ strings, first, last }: NeckBoard, layout: NeckLayout): string {
  return strings
    .flatMap(({ number, course, begins }) => {
      const from = layout.wire(Math.max(begins, first));
      const middle = layout.string(number);
      const both = course ? [middle - 2, middle + 2] : [middle];
      return both.map((across) => line(layout, [from, across], [layout.wire(last), across]));
    })
    .join('');
}

/** A partial capo, close behind its fret; a full one is where the picture begins. */
function capoPath({ capo, first, last }: NeckBoard, layout: NeckLayout): string {
  if (!capo || capo.fret <= first || capo.fret > last) return '';
  const [from, to] = layout.span(capo.fret);
  const along = to - Math.min(6, (to - from) / 4);
  return line(layout, [along, layout.string(capo.from)], [along, layout.string(capo.to)]);
}

type Point = readonly [along: number, across: number];

function line(layout: NeckLayout, from: Point, to: Point): string {
  return `M${point(layout, from)}L${point(layout, to)}`;
}

function point({ upright, leftHanded, length }: NeckLayout, [along, across]: Point): string {
  if (upright) return `${across} ${along}`;
  return `${leftHanded ? length - along : along} ${across}`;
}
