import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ConvertRequest, Offer } from '../serviceApi';
import type { Goal } from './convertGoal';
import { goalOf, shiftFor } from './convertGoal';
import { soundWays } from './convertSound';
import { MOST_NOTES_TO_TRY } from './handTask';
import { nameOf, type PassageEntry } from './placing';
import { halfStepWords } from './remarks';
import type { Slice } from './slices';
import type { Way } from './ways';

/** Capos are tried up to here: beyond it little of the neck is left (engineering value). */
const HIGHEST_CAPO = 7;

/**
 * What else could be asked where notes have no place: to leave out doubled inner notes only, to take notes to other
 * octaves, the smallest move of the whole passage, the capo that makes it easiest. Each has been tried and gives what
 * its title says.
 */
export function offersFor(
  document: TabDocument,
  slices: readonly Slice[],
  goal: Goal,
  request: ConvertRequest,
  way: Way,
  settings: Settings,
): readonly Offer[] {
  if (unplacedIn(way) === 0 || request.leaveOut !== undefined) return [];
  const tried: Tried = (next) => {
    const there = goalOf(slices, next, settings);
    if ('error' in there) return undefined;
    return soundWays(document, slices, there, { ...next, alternatives: 1 }, settings)?.[0];
  };
  const asked = shiftFor(goal);
  return [
    ...doubledOffer(request, tried),
    ...octaveOffer(request, way, asked, tried),
    ...moveOffer(request, goal, way, tried),
    ...capoOffer(request, slices, way, tried),
  ];
}

type Tried = (request: ConvertRequest) => Way | undefined;

function unplacedIn({ entries, reasonOf }: Way): number {
  return entries.filter((entry) => reasonOf(entry) !== undefined).length;
}

function doubledOffer(request: ConvertRequest, tried: Tried): Offer[] {
  const next: ConvertRequest = { ...request, leaveOut: 'doubled' };
  const way = tried(next);
  if (!way) return [];
  const out = way.entries.filter((entry) => way.reasonOf(entry) !== undefined);
  const [only] = out;
  // What has no pitch, or cannot be joined as it was, is no doubled note.
  if (!only || out.some(({ note }) => note.pitches.length === 0)) return [];
  const what =
    out.length === 1
      ? `1 doubled inner note (bar ${only.bar}: ${nameOf(only.note)})`
      : `${out.length} doubled inner notes`;
  return [{ title: `Leave out ${what}; bass, top and chords are kept`, request: next }];
}

function octaveOffer(
  request: ConvertRequest,
  before: Way,
  asked: (entry: PassageEntry) => number,
  tried: Tried,
): Offer[] {
  if (request.octaves) return [];
  const next: ConvertRequest = { ...request, octaves: true };
  const way = tried(next);
  if (!way) return [];
  const left = unplacedIn(way);
  if (left >= unplacedIn(before)) return [];
  const moved = way.entries.filter(
    (entry) => way.reasonOf(entry) === undefined && way.shiftOf(entry) !== asked(entry),
  ).length;
  const notes = `${moved} ${moved === 1 ? 'note' : 'notes'}`;
  const rest = left === 0 ? 'every note has a place' : `${left} ${left === 1 ? 'is' : 'are'} still left out`;
  return [{ title: `Move ${notes} to another octave; ${rest}`, request: next }];
}

function moveOffer(request: ConvertRequest, goal: Goal, { fitsAt }: Way, tried: Tried): Offer[] {
  if (fitsAt === undefined) return [];
  const by = goal.by + fitsAt;
  const next: ConvertRequest = { ...request, by };
  const way = tried(next);
  if (!way || unplacedIn(way) > 0) return [];
  const title =
    by === 0
      ? 'Leave the passage at its pitch; every note has a place'
      : `Move the whole passage ${halfStepWords(by)}; every note has a place`;
  return [{ title, request: next }];
}

function capoOffer(request: ConvertRequest, slices: readonly Slice[], way: Way, tried: Tried): Offer[] {
  const count = way.hands.reduce((sum, { task }) => sum + task.notes.length, 0);
  if (count > MOST_NOTES_TO_TRY || slices.some(({ system }) => system.header.capo?.strings)) return [];
  let best: { readonly offer: Offer; readonly cost: number } | undefined;
  for (let fret = 0; fret <= HIGHEST_CAPO; fret++) {
    const capo = fret === 0 ? 'none' : String(fret);
    const next: ConvertRequest = { ...request, capo };
    const there = tried(next);
    if (!there || unplacedIn(there) > 0) continue;
    const cost = there.hands.reduce((sum, { answer }) => sum + (answer?.cost ?? Infinity), 0);
    if (best && cost >= best.cost) continue;
    const title =
      fret === 0
        ? 'Take the capo off; every note has a place'
        : `Put the capo at fret ${fret}; every note has a place`;
    best = { offer: { title, request: next }, cost };
  }
  return best ? [best.offer] : [];
}
