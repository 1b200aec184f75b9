import { Component, type ComponentChild, type CSSProperties, type JSX } from 'preact';
import type { NeckPlace } from '../../service/neck/neckAnswer';
import type { NeckLabels } from '../messages/neckMessages';
import { boxOf, placeBox, type Box, type NeckLayout } from './layout';
import { Lines } from './lines';
import { moved } from './moves';
import type { At } from './remembered';
import { lookOf, type Neck } from './words';

export interface BoardProps {
  readonly neck: Neck;
  readonly layout: NeckLayout;
  readonly labels: NeckLabels;
  readonly every: boolean;
  readonly at: At;
  readonly onSelect: (at: At) => void;
  readonly onWrite: (at: At) => void;
}

/**
 * The neck as a grid: one place of it is reached by Tab, the arrow keys go on from there. Its rows are the page's rows:
 * frets where the neck stands, strings where it lies.
 */
export function Board(props: BoardProps): JSX.Element {
  const { neck, layout, at, onSelect, onWrite } = props;
  const { board } = neck;
  const { upright, length, breadth } = layout;
  const cells = board.numbers.map((_, index) => board.first + index);
  const press = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onWrite(at);
      return;
    }
    const to = moved(board, layout, at, event);
    if (!to) return;
    event.preventDefault();
    onSelect(to);
    document.getElementById(idOf(to))?.focus();
  };
  const strings = upright && !layout.leftHanded ? [...board.strings].reverse() : board.strings;
  const ofCell = (cell: number): JSX.Element[] =>
    strings.flatMap(({ number, places }, index) => {
      const place = places.find((one) => one.cell === cell);
      return place ? [one(place, number, index + 2)] : [];
    });
  const one = (place: NeckPlace, string: number, column: number): JSX.Element => {
    const selected = at.string === string && at.fret === place.fret;
    const look = lookOf(place, string, neck, props.labels, props.every, selected);
    return (
      <Place
        key={idOf({ string, fret: place.fret })}
        string={string}
        fret={place.fret}
        column={column}
        box={placeBox(layout, string, place.cell)}
        {...look}
        root={place.root && !props.every}
        selected={selected}
        onSelect={onSelect}
        onWrite={onWrite}
      />
    );
  };
  return (
    <div
      class="board"
      role="grid"
      aria-label={`Neck, ${board.title}`}
      aria-rowcount={(upright ? cells.length : strings.length) + 1}
      aria-colcount={(upright ? strings.length : cells.length) + 1}
      style={px({ width: upright ? breadth : length, height: upright ? length : breadth })}
      onKeyDown={press}
    >
      <Lines board={board} layout={layout} />
      <div role="row" aria-rowindex={1}>
        {upright
          ? strings.map(({ number }, index) => <StringNumber {...{ layout, number }} column={index + 2} />)
          : cells.map((cell, index) => (
              <FretNumber {...{ layout, cell }} number={board.numbers[index] ?? 0} column={index + 2} />
            ))}
      </div>
      {upright
        ? cells.map((cell, index) => (
            <div role="row" aria-rowindex={index + 2} key={cell}>
              <FretNumber {...{ layout, cell }} number={board.numbers[index] ?? 0} />
              {ofCell(cell)}
            </div>
          ))
        : strings.map(({ number, places }, index) => (
            <div role="row" aria-rowindex={index + 2} key={number}>
              <StringNumber {...{ layout, number }} />
              {places.map((place) => one(place, number, place.cell - board.first + 2))}
            </div>
          ))}
    </div>
  );
}

interface NumberProps {
  readonly layout: NeckLayout;
  readonly number: number;
  /** Of a header of a column; left out for that of a row. */
  readonly column?: number;
}

function StringNumber({ layout, number, column }: NumberProps): JSX.Element {
  const middle = layout.string(number);
  const box = boxOf(layout, [0, 24], [middle - layout.room / 2, middle + layout.room / 2]);
  return <Header box={box} column={column} text={String(number)} name={`string ${number}`} />;
}

function FretNumber({ layout, number, cell, column }: NumberProps & { readonly cell: number }): JSX.Element {
  const box = boxOf(layout, layout.span(cell), [0, 24]);
  const text = number === 0 ? '' : String(number);
  return <Header box={box} column={column} text={text} name={number === 0 ? 'open' : `fret ${number}`} />;
}

interface HeaderProps {
  readonly box: Box;
  readonly column: number | undefined;
  readonly text: string;
  readonly name: string;
}

function Header({ box, column, text, name }: HeaderProps): JSX.Element {
  return (
    <div
      class="number"
      role={column === undefined ? 'rowheader' : 'columnheader'}
      aria-colindex={column ?? 1}
      aria-label={name}
      style={px(box)}
    >
      {text}
    </div>
  );
}

interface PlaceProps extends At {
  readonly column: number;
  readonly box: Box;
  readonly label: string;
  readonly how: string | undefined;
  readonly same: boolean;
  readonly name: string;
  readonly root: boolean;
  readonly selected: boolean;
  readonly onSelect: (at: At) => void;
  readonly onWrite: (at: At) => void;
}

/** Drawn anew only where something of it has changed: a cursor that moves changes a few of two hundred. */
class Place extends Component<PlaceProps> {
  override shouldComponentUpdate(next: PlaceProps): boolean {
    const now = this.props;
    return (
      SHOWN.some((name) => now[name] !== next[name]) || EDGES.some((edge) => now.box[edge] !== next.box[edge])
    );
  }

  override render({
    string,
    fret,
    column,
    box,
    label,
    how,
    same,
    name,
    root,
    selected,
  }: PlaceProps): ComponentChild {
    const looks = ['label', how, same && 'same', root && 'root'].filter(Boolean).join(' ');
    return (
      <div
        id={idOf({ string, fret })}
        class="place"
        role="gridcell"
        aria-colindex={column}
        aria-label={name}
        aria-selected={selected}
        tabIndex={selected ? 0 : -1}
        style={px(box)}
        onClick={() => this.props.onSelect({ string, fret })}
        onFocus={() => !selected && this.props.onSelect({ string, fret })}
        onDblClick={() => this.props.onWrite({ string, fret })}
      >
        {label === '' ? null : <span class={looks}>{label}</span>}
      </div>
    );
  }
}

const SHOWN = [
  'column',
  'label',
  'how',
  'same',
  'name',
  'root',
  'selected',
  'onSelect',
  'onWrite',
] as const satisfies (keyof PlaceProps)[];
const EDGES = ['left', 'top', 'width', 'height'] as const satisfies (keyof Box)[];

function idOf({ string, fret }: At): string {
  return `place-${string}-${fret}`;
}

function px(lengths: Partial<Box>): CSSProperties {
  return Object.fromEntries(Object.entries(lengths).map(([name, length]) => [name, `${length}px`]));
}
