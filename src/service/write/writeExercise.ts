import { add, fraction, multiply, type Fraction } from '../../music/fraction';
import { formatNoteName } from '../../music/noteName';
import { spellMidi } from '../../music/spelling';
import { soundingSpelling } from '../../notation/headerViews';
import type { Place, TabDocument } from '../../notation/tabDocument';
import type { HandAnswer } from '../../playing/hand/handSearch';
import { capoWords } from '../change/remarks';
import type { Settings } from '../records';
import type { ChangeResult, ServiceError } from '../serviceApi';
import type { Canvas } from './canvas';
import { directed, runOf, type Run } from './exerciseRun';
import { chordTones, scaleTones, type ExerciseTones } from './exerciseTones';
import { fingered, notesOfMoments, type MomentNote } from './fingered';
import { withFingers } from './fingersRow';
import { newBarsNear } from './newBarsPlace';
import { barsText, omittedOf, unplacedOf } from './notesReport';
import { readNoteValue, USUAL_VALUE } from './noteValue';
import { putsOf } from './placedPuts';
import { inPosition, readPosition, type Position } from './position';
import type { Moment } from './timedNotes';
import type { Direction, WriteExerciseRequest } from './writeRequest';
import { refused } from './writeNotes';
import { writeOn } from './writeOn';

/**
 * Lays down a scale or an arpeggio as an exercise: a line that names it, new bars behind the system at the place or near
 * the place, and a row of the hand's fingers. In a position the notes lie under the four fingers, a fret to either side
 * where it must be; over octaves without a position the search is as free as everywhere.
 * Errors: a scale, chord, value, position or number of octaves that cannot be had.
 * @example writeExercise(document, place, { scale: 'C major', inPosition: 'open', direction: 'up' }, settings)
 */
export function writeExercise(
  document: TabDocument,
  place: Place,
  request: WriteExerciseRequest,
  settings: Settings,
): ChangeResult {
  const { canvas, at } = newBarsNear(document, place);
  const exercise = readExercise(canvas, request);
  if ('error' in exercise) return exercise;
  const { tones, position, run, value } = exercise;
  const direction = request.direction ?? 'up and down';
  const moments = momentsOf(canvas, directed(run.pitches, direction), value);
  const end = moments.at(-1)?.end;
  if (!end) return { error: `${tones.title} has no note here; ask for another position, or for none.` };
  const notes = notesOfMoments(moments);
  const wish = position
    ? { openStrings: position.openStrings, target: inPosition.bind(undefined, position) }
    : {};
  const answer = fingered(notes, canvas, wish, settings);
  const unplaced = unplacedOf(canvas, notes, answer);
  if (unplaced.length === notes.length)
    return { error: `${tones.title} has no place here; ask for another position, or for none.` };
  const heading = headingOf(exercise, direction);
  const written = writeOn(document, canvas, putsOf(notes, answer, []), end, at, {
    heading,
    omitted: omittedOf(notes, answer),
    ...(request.fingers !== false && { system: fingering(notes, answer, canvas) }),
  });
  if ('error' in written) return written;
  const { capo } = canvas.header;
  const sounds =
    tones.sounds === undefined || !capo ? [] : [`It sounds ${tones.sounds}, ${capoWords(capo)}.`];
  const away = position ? leavesPosition(notes, answer, position) : [];
  const remarks = [`${heading}, in ${barsText(canvas, moments)}.`, ...sounds, ...run.remarks, ...away];
  const notesIn = notes.length;
  return { ...written, report: { notesIn, kept: notesIn - unplaced.length, moved: 0, unplaced, remarks } };
}

interface Exercise {
  readonly tones: ExerciseTones;
  readonly position: Position | undefined;
  readonly run: Run;
  readonly value: Fraction;
}

function readExercise({ header }: Canvas, request: WriteExerciseRequest): Exercise | ServiceError {
  const { scale, chord } = request;
  if ((scale === undefined) === (chord === undefined))
    return { error: 'Name one scale, such as D dorian, or one chord, such as Am7.' };
  const tones = scale === undefined ? chordTones(chord ?? '', header) : scaleTones(scale, header);
  if (!tones.ok) return refused(tones);
  const value = readNoteValue(request.value ?? USUAL_VALUE);
  if (!value.ok) return refused(value);
  let position: Position | undefined;
  if (request.inPosition !== undefined) {
    const read = readPosition(request.inPosition, header);
    if (!read.ok) return refused(read);
    position = read.value;
  }
  const run = runOf(tones.value, header, position, request.octaves);
  if (!run.ok) return refused(run);
  return { tones: tones.value, position, run: run.value, value: value.value };
}

function momentsOf({ header, from }: Canvas, pitches: readonly number[], value: Fraction): Moment[] {
  return pitches.map((midi, i) => {
    const onset = add(from, multiply(value, fraction(i)));
    const name = formatNoteName(spellMidi(midi, soundingSpelling(header)));
    return { notes: [{ midi, name }], onset, end: add(onset, value) };
  });
}

/** `D dorian, position 5, up and down`. */
function headingOf({ tones, position, run }: Exercise, direction: Direction): string {
  const octaves =
    run.octaves === undefined ? [] : [run.octaves === 1 ? '1 octave' : `${run.octaves} octaves`];
  return [tones.title, ...(position ? [position.words] : octaves), direction].join(', ');
}

/** Puts the row of fingers over each new system, one after the other. */
function fingering(notes: readonly MomentNote[], { fingers }: HandAnswer, { header }: Canvas) {
  const left = notes.flatMap((_, id) => fingers.get(id) ?? []);
  return (lines: readonly string[]): readonly string[] => withFingers(lines, () => left.shift(), header);
}

/** Notes for which the hand has to move, told once. */
function leavesPosition(
  notes: readonly MomentNote[],
  { placements }: HandAnswer,
  { words, openStrings, back, up }: Position,
): string[] {
  const out = placements.flatMap(({ id, fret }) => {
    const inside = fret === 0 ? openStrings : fret >= back && fret <= up;
    return inside ? [] : [notes[id]?.name ?? ''];
  });
  const names = [...new Set(out)];
  return names.length === 0 ? [] : [`The hand leaves ${words} for ${names.join(' ')}.`];
}
