import { formatKey } from '../../music/key';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { capoShift } from '../../notation/headerViews';
import type { RowLine, RowMark } from '../../notation/parsedLine';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ConvertRequest, Report } from '../serviceApi';
import { changeOf, type Attempt } from './change';
import { shiftFor, type Goal } from './convertGoal';
import { lostJoins } from './joins';
import { measureRemarks, measuresOf } from './handMeasures';
import { chordInKey } from './keyFunction';
import { changeInNewPart } from './newPart';
import { nameOf, unplacedNotes, type PassageEntry } from './placing';
import { leftOut, halfStepWords, notesOutOf, verb } from './remarks';
import { keyOf, type Rewriting } from './rewrite';
import type { Slice } from './slices';
import { waysOf, type Way, type Wish } from './ways';

/** What is asked of the hand by a request. */
export function wishOf(
  document: TabDocument,
  slices: readonly Slice[],
  goal: Goal,
  request: ConvertRequest,
): Wish {
  const shift = shiftFor(goal);
  return {
    shift,
    objective: request.objective ?? 'total',
    openStrings: request.closed !== true,
    anew: request.closed === true,
    alternatives: Math.min(3, Math.max(1, Math.trunc(request.alternatives ?? 1))),
    octaves: request.octaves === true,
    doubledOnly: request.leaveOut === 'doubled',
    ...(goal.key && { without: lostJoins(document, slices, shift) }),
  };
}

/** The ways to carry the sound or the function of a passage; undefined where only doubled notes may go and that is not enough. */
export function soundWays(
  document: TabDocument,
  slices: readonly Slice[],
  goal: Goal,
  request: ConvertRequest,
  settings: Settings,
): readonly [Way, ...Way[]] | undefined {
  return waysOf(document, slices, goal.headerFor, wishOf(document, slices, goal, request), settings);
}

/** Writes one way. */
export function writeWay(
  document: TabDocument,
  slices: readonly Slice[],
  goal: Goal,
  request: ConvertRequest,
  way: Way,
  settings: Settings,
): Attempt {
  const names = new Map(way.entries.map((entry) => [keyOf(entry.slice, entry.index), nameOf(entry.note)]));
  const rewriting: Rewriting = {
    header: ({ system }) => goal.headerFor(system.header),
    place: way.at,
    keepLabels: false,
    omitted: (slice, index) => names.get(keyOf(slice, index)),
    ...chordRewriting(goal),
  };
  const report = (unwritten: ReadonlySet<string>): Report => reportOf(document, slices, goal, way, unwritten);
  return request.newPart === undefined
    ? changeOf(document, slices, rewriting, report, settings)
    : changeInNewPart(document, slices, request.newPart, rewriting, report, settings);
}

/** Chord names go with the key. */
function chordRewriting({ key, by, headerFor }: Goal): Pick<Rewriting, 'rewrite'> {
  return {
    rewrite: ({ system: { header } }: Slice, row: RowLine, mark: RowMark): string => {
      if (row.row !== 'chords') return mark.text;
      const after = headerFor(header);
      if (key && header.key)
        return transposeWrittenChord(chordInKey(mark.text, header.key, key), by, after.key);
      const shift = by + capoShift(header) - capoShift(after);
      return shift === 0 ? mark.text : transposeWrittenChord(mark.text, shift, after.key);
    },
  };
}

function reportOf(
  document: TabDocument,
  slices: readonly Slice[],
  goal: Goal,
  way: Way,
  unwritten: ReadonlySet<string>,
): Report {
  const { entries, reasonOf, shiftOf } = way;
  const unplaced = unplacedNotes(document, entries, reasonOf, unwritten);
  const isOut = (entry: PassageEntry): boolean =>
    reasonOf(entry) !== undefined || unwritten.has(keyOf(entry.slice, entry.index));
  const asked = shiftFor(goal);
  const placed = entries.filter((entry) => !isOut(entry));
  const isMoved = (entry: PassageEntry): boolean => entry.note.kind !== 'muted' && shiftOf(entry) !== 0;
  const moved = placed.filter(isMoved).length;
  const elsewhere = placed.filter(
    (entry) => entry.note.kind !== 'muted' && shiftOf(entry) !== asked(entry),
  ).length;
  const notesIn = entries.length;
  const measures = measuresOf(document, way);
  const stays = way.hands.some((hand) => hand.stays);
  const remarks = [
    summary(slices, goal, placed.length - elsewhere, notesIn),
    ...(elsewhere > 0
      ? [`${elsewhere} ${elsewhere === 1 ? 'note goes' : 'notes go'} to another octave.`]
      : []),
    ...leftOut(unplaced.length),
    ...(stays ? [`What stands in ${goal.name} already stays as it is.`] : []),
    ...measureRemarks(measures),
    ...goal.cautions,
  ];
  return {
    notesIn,
    kept: placed.length - moved,
    moved,
    unplaced,
    remarks,
    ...(goal.cautions.length > 0 && { cautions: goal.cautions }),
    ...(measures && { measures }),
  };
}

function summary(slices: readonly Slice[], { key, by, name }: Goal, as: number, all: number): string {
  const notes = notesOutOf(as, all);
  if (key) {
    const from = slices.find(({ system }) => system.header.key)?.system.header.key;
    const keys = from ? `, from ${formatKey(from)} to ${formatKey(key)}` : '';
    const more = by === 0 ? '' : `, and ${halfStepWords(by)} as a whole`;
    return `${notes} ${verb(as, all, 'keep their', 'keeps its')} degree in ${name}${keys}${more}.`;
  }
  if (by !== 0) return `${notes} ${verb(as, all, 'move', 'moves')} ${halfStepWords(by)} in ${name}.`;
  return `${notes} ${verb(as, all, 'keep their', 'keeps its')} pitch in ${name}.`;
}
