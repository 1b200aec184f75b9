import type { NeckAnswer, NeckBoard, NeckMoment, NeckPlace } from '../../service/neck/neckAnswer';
import type { NeckLabels } from '../messages/neckMessages';
import type { At } from './remembered';

/** A neck that is there to be drawn. */
export type Neck = Required<NeckAnswer>;

/** How a place is to be shown. */
export interface Look {
  readonly label: string;
  /** What sounds in the column under the cursor. */
  readonly how: NeckMoment['sounding'][number]['how'] | undefined;
  /** It sounds the note that the cursor stands on. */
  readonly same: boolean;
  /** Everything a screen reader says. */
  readonly name: string;
}

const HOW = { struck: 'sounds here', rings: 'rings here', harmonic: 'a harmonic sounds here' } as const;

/**
 * @param every whether places that are not marked show their label too
 * @param selected the selected place shows its label in any case
 */
export function lookOf(
  place: NeckPlace,
  string: number,
  { board, moment }: Neck,
  labels: NeckLabels,
  every: boolean,
  selected = false,
): Look {
  const { fret, marked, name } = place;
  const how = moment.sounding.find((one) => one.string === string && one.fret === fret)?.how;
  const same = moment.note?.places.some((one) => one.string === string && one.fret === fret) ?? false;
  const shown = every || marked || selected || how !== undefined || same;
  const told = [
    name,
    saidAs(place, labels),
    !every && !marked ? `not in the ${board.tones.kind === 'chord' ? 'chord' : 'scale'}` : '',
    how ? HOW[how] : '',
    same && !how ? 'the same note' : '',
  ];
  return { label: shown ? labelOf(place, labels) : '', how, same, name: told.filter(Boolean).join(', ') };
}

function labelOf({ note, degree, interval }: NeckPlace, labels: NeckLabels): string {
  if (labels === 'notes') return note;
  return labels === 'degrees' ? (degree?.short ?? note) : interval.short;
}

function saidAs({ degree, interval }: NeckPlace, labels: NeckLabels): string {
  if (labels === 'notes') return '';
  return labels === 'degrees' ? (degree?.words ?? '') : interval.words;
}

/** The place that a remembered one is on this neck; else the lowest-placed string, open. */
export function placeAt(board: NeckBoard, at: At | null): At {
  const found = at && board.strings[at.string - 1]?.places.find(({ fret }) => fret === at.fret);
  if (found) return at;
  const string = board.strings.at(-1);
  return { string: string?.number ?? 1, fret: string?.places[0]?.fret ?? 0 };
}
