import { toNumber } from '../../music/fraction';
import type { Header } from '../../notation/header';
import { handOptions, playPassage, type HandAnswer, type HandOptions } from '../../playing/hand/handSearch';
import type { PassageNote } from '../../playing/passage';
import type { Target } from '../../playing/target';
import { targetOf } from '../change/placing';
import type { Settings } from '../records';
import { barAt, type Canvas } from './canvas';
import type { Moment } from './timedNotes';
import { toNearest } from './toNearest';
import type { NamedPitch } from './typedPitches';

/** A note of some moments; its place in the list is its id in the search. */
export interface MomentNote extends NamedPitch {
  readonly moment: Moment;
}

/** The notes of moments in the order in which they were typed. */
export function notesOfMoments(moments: readonly Moment[]): MomentNote[] {
  return moments.flatMap((moment) => moment.notes.map((note) => ({ ...note, moment })));
}

/** What may be asked of the hand beside the least effort. */
export interface FingeringWish {
  /** String numbers that may be used; all of them where nothing is said. */
  readonly strings?: readonly number[] | undefined;
  readonly openStrings?: boolean;
  /** Another neck, such as one with fewer places. */
  readonly target?: (own: Target) => Target;
}

/** Fingers notes by the same search as every other passage, under the fields of a canvas. */
export function fingered(
  notes: readonly MomentNote[],
  canvas: Canvas,
  { strings, openStrings = true, target = (own) => own }: FingeringWish,
  settings: Settings,
): HandAnswer {
  const { header } = canvas;
  const bars = notes.map(({ moment }) => barAt(canvas, moment.onset).number);
  const passage = notes.map(({ midi, moment }, id): PassageNote => ({
    id,
    midi,
    onset: toNumber(moment.onset),
    end: toNumber(moment.end),
    string: 0,
    joinedTo: undefined,
    need: 'any',
    reaches: [],
  }));
  const options = {
    ...optionsOf(header, strings, openStrings, settings),
    barOf: (id: number) => bars[id] ?? 0,
  };
  const [best] = playPassage(passage, target(toNearest(targetOf(header, settings))), options);
  if (!best) throw new Error('A passage has an answer even where all of it is left out.');
  return best;
}

function optionsOf(
  { tempo }: Header,
  strings: readonly number[] | undefined,
  openStrings: boolean,
  { thumb }: Settings,
): HandOptions {
  return handOptions({ strings, openStrings, thumb, secondsPerQuarter: 60 / tempo.quartersPerMinute });
}
