import { compare } from '../../music/fraction';
import { capoShift } from '../../notation/headerViews';
import type { HandAnswer } from '../../playing/hand/handSearch';
import type { OmittedNote } from '../change/omitted';
import { reasonText } from '../change/reasonText';
import { capoWords } from '../change/remarks';
import type { Report, UnplacedNote } from '../serviceApi';
import { barAt, type Canvas } from './canvas';
import type { MomentNote } from './fingered';
import type { Moment } from './timedNotes';

/** The notes that have no place, in the order in which they were typed. */
export function unplacedOf(
  canvas: Canvas,
  notes: readonly MomentNote[],
  { unplaced }: HandAnswer,
): UnplacedNote[] {
  return [...unplaced]
    .sort((a, b) => a.id - b.id)
    .flatMap((one) => {
      const note = notes[one.id];
      if (!note) return [];
      const { number: bar } = barAt(canvas, note.moment.onset);
      return [{ bar, name: note.name, reason: reasonText(one, canvas.header) }];
    });
}

/** The same with their times, for the row that names them in the text. */
export function omittedOf(notes: readonly MomentNote[], { unplaced }: HandAnswer): OmittedNote[] {
  return unplaced.flatMap(({ id }) => {
    const note = notes[id];
    return note ? [{ name: note.name, onset: note.moment.onset }] : [];
  });
}

/** So many names are told, the rest is counted. */
const MOST_NAMES = 16;

/**
 * What was written, in the names that sound.
 * @param degrees whether some were typed as degrees
 */
export function notesReport(
  canvas: Canvas,
  moments: readonly Moment[],
  unplaced: readonly UnplacedNote[],
  degrees: boolean,
): Report {
  const { capo, key } = canvas.header;
  const notesIn = moments.reduce((sum, { notes }) => sum + notes.length, 0);
  const names = moments.map(({ notes }) => notes.map(({ name }) => name).join('+'));
  const told = names.slice(0, MOST_NAMES).join(' ') + (names.length > MOST_NAMES ? ' …' : '');
  const shifted = degrees && key && capoShift(canvas.header) > 0;
  return {
    notesIn,
    kept: notesIn - unplaced.length,
    moved: 0,
    unplaced,
    remarks: [
      `${notesIn === 1 ? '1 note' : `${notesIn} notes`} in ${barsText(canvas, moments)}: ${told}.`,
      ...(capo ? [`These are the names that sound, ${capoWords(capo)}.`] : []),
      ...(shifted ? ['Degrees are counted in the key as played.'] : []),
    ],
  };
}

/** `bar 3`, `bars 3–4`. */
export function barsText(canvas: Canvas, moments: readonly Moment[]): string {
  const onsets = moments.map(({ onset }) => onset).sort(compare);
  const from = barAt(canvas, onsets[0] ?? canvas.from).number;
  const to = barAt(canvas, onsets.at(-1) ?? canvas.from).number;
  return from === to ? `bar ${from}` : `bars ${from}–${to}`;
}
