import { isCount, isFlag, isNullable, isOneOf, isRecord, isText } from '../messages/message';
import { NECK_LABELS, type NeckChoice, type NeckLabels } from '../messages/neckMessages';

/** A place on the neck by its string and its fret as written. */
export interface At {
  readonly string: number;
  readonly fret: number;
}

export const MARKS = ['key', 'scale', 'chord', 'every'] as const;
export type Marks = (typeof MARKS)[number];

/** What the page remembers: the user's choices and the place that is selected. */
export interface Remembered {
  readonly labels: NeckLabels;
  readonly marks: Marks;
  readonly scale: string;
  readonly chord: string;
  /** How many frets are shown; 0 for all. */
  readonly frets: number;
  readonly table: boolean;
  readonly at: At | null;
}

export const FIRST_TIME: Remembered = {
  labels: 'notes',
  marks: 'key',
  scale: '',
  chord: '',
  frets: 12,
  table: false,
  at: null,
};

export const isRemembered = isRecord<Remembered>({
  labels: isOneOf(...NECK_LABELS),
  marks: isOneOf(...MARKS),
  scale: isText,
  chord: isText,
  frets: isCount,
  table: isFlag,
  at: isNullable(isRecord<At>({ string: isCount, fret: isCount })),
});

/** What the extension is asked for these choices; a name that is not typed yet marks the key. */
export function choiceOf({ marks, scale, chord, frets }: Remembered): NeckChoice {
  return {
    ...(marks === 'scale' && scale.trim() !== '' ? { scale } : {}),
    ...(marks === 'chord' && chord.trim() !== '' ? { chord } : {}),
    ...(frets > 0 ? { frets } : {}),
  };
}
