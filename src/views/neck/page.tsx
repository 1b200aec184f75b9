import type { JSX } from 'preact';
import { Status } from '../shared/status';
import { sentence } from '../shared/words';
import { Wide } from '../shared/wide';
import { Board } from './board';
import { Controls } from './controls';
import { layOut } from './layout';
import type { At, Remembered } from './remembered';
import { NeckTable } from './table';
import { placeAt, type Neck } from './words';

/** Everything that the page shows. */
export interface PageState {
  /** Undefined until the extension has spoken, and where there is no tab. */
  readonly neck: Neck | undefined;
  /** What to do where there is no neck. */
  readonly nothing: string;
  readonly leftHanded: boolean;
  readonly problem: string;
  readonly done: string;
  readonly undoable: boolean;
  readonly choices: Remembered;
  /** Of the page, in pixels. */
  readonly width: number;
}

/** What the user does; always the same functions, so that places need not be drawn anew. */
export interface PageActions {
  readonly change: (changed: Partial<Remembered>) => void;
  readonly select: (at: At) => void;
  readonly write: (at: At) => void;
  readonly undo: () => void;
  readonly copy: (text: string) => void;
  readonly save: (upright: boolean) => void;
}

export function Page({
  state,
  actions,
}: {
  readonly state: PageState;
  readonly actions: PageActions;
}): JSX.Element {
  const { neck, nothing, choices, problem, leftHanded, width } = state;
  if (!neck) return <p class="quiet">{nothing}</p>;
  const { board, moment } = neck;
  const layout = layOut(board, width, leftHanded);
  const every = choices.marks === 'every';
  const at = placeAt(board, choices.at);
  const look = { neck, labels: choices.labels, every };
  return (
    <>
      <Head neck={neck} />
      <Controls choices={choices} problem={problem} onChange={actions.change} />
      <Marked neck={neck} choices={choices} onCopy={actions.copy} />
      <div class="buttons">
        <button type="button" class="main" disabled={!moment.writable} onClick={() => actions.write(at)}>
          Write {nameOf(neck, at)}
        </button>
        <button type="button" disabled={!state.undoable} onClick={actions.undo}>
          Undo
        </button>
      </div>
      <p class="quiet">{sentence(moment.writeWords)}</p>
      <Status words={state.done === '' ? '' : sentence(state.done)} />
      {choices.table ? (
        <NeckTable {...look} />
      ) : (
        <Wide name="Neck">
          <Board {...look} layout={layout} at={at} onSelect={actions.select} onWrite={actions.write} />
        </Wide>
      )}
      <p class="moment">
        {moment.where === '' ? '' : sentence(moment.words)}
        {moment.note ? ` ${sentence(moment.note.words)}` : ''}
      </p>
      <Legend />
      <div class="buttons">
        <button
          type="button"
          aria-pressed={choices.table}
          onClick={() => actions.change({ table: !choices.table })}
        >
          As a table
        </button>
        <button type="button" onClick={() => actions.save(layout.upright)}>
          Save as SVG…
        </button>
      </div>
    </>
  );
}

function Head({ neck: { board } }: { readonly neck: Neck }): JSX.Element {
  return (
    <header>
      <h1>{board.title}</h1>
      {board.facts.length === 0 ? null : <p class="quiet">{board.facts.map(sentence).join(' ')}</p>}
    </header>
  );
}

interface MarkedProps {
  readonly neck: Neck;
  readonly choices: Remembered;
  readonly onCopy: (text: string) => void;
}

/** The notes that are marked, what degrees and intervals count from, and the frets to copy. */
function Marked({ neck: { board }, choices: { marks, labels }, onCopy }: MarkedProps): JSX.Element | null {
  const { tones, root, degreesIn } = board;
  const counted =
    labels === 'intervals'
      ? `Intervals count from ${root.note}, ${root.words}.`
      : labels === 'degrees'
        ? degreesIn === null
          ? 'There is no key to count degrees in: write one as key: in the tab, or choose a scale. Notes are shown.'
          : `Degrees of ${degreesIn}.`
        : '';
  const shown = marks !== 'every' && tones.kind !== 'none';
  if (!shown && counted === '') return null;
  return (
    <div class="marked">
      {shown ? (
        <p>
          <strong>{tones.name}</strong>: {tones.notes.join(' ')}
        </p>
      ) : null}
      {counted === '' ? null : <p class="quiet">{counted}</p>}
      {shown && tones.sets !== '' ? (
        <details>
          <summary>Frets on each string</summary>
          <p>{sentence(tones.sets)}</p>
          <button type="button" onClick={() => onCopy(tones.sets)}>
            Copy frets
          </button>
        </details>
      ) : null}
    </div>
  );
}

function Legend(): JSX.Element {
  return (
    <p class="legend quiet">
      <span class="label struck">A</span> sounds here, <span class="label rings">A</span> rings here,{' '}
      <span class="label same">A</span> the same note, <span class="label root">A</span> the root
    </p>
  );
}

function nameOf({ board }: Neck, at: At): string {
  return board.strings[at.string - 1]?.places.find(({ fret }) => fret === at.fret)?.name ?? '';
}
