import { createFingerboard } from '../../instrument/sounding';
import { usualStrings } from '../../instrument/stringsFromNotes';
import { nameOfTuning, stepsFrom } from '../../instrument/tuningFormat';
import type { Tuning } from '../../instrument/tuning';
import type { HandAnswer } from '../hand/handAnswer';
import { measurePlacement, playPassage } from '../hand/handSearch';
import type { PassageNote, Placement } from '../passage';
import type { Target } from '../target';
import { moved } from '../transposable';
import { limitsOf, retuningEffort } from './retunings';
import type { Suited, SuitedWhy, SuitRequest } from './suitAnswer';

/**
 * Fingers the passage in a tuning with the hand's own search and says why it is as easy as it is.
 * @param known where its notes are in the easiest fingering, if that has been found: the answer is the same, and soon
 *   worked out
 */
export function describe(
  request: SuitRequest,
  tuning: Tuning,
  halfSteps: number,
  known?: readonly Placement[],
): Suited {
  const notes = halfSteps === 0 ? request.notes : request.notes.map((note) => moved(note, halfSteps));
  const target = targetFor(request, tuning);
  const options = { ...request.options, alternatives: 1 };
  const measured = known && measurePlacement(notes, known, target, options);
  const [answer] = measured ? [measured] : playPassage(notes, target, options);
  const played = answer && answer.unplaced.length === 0 ? answer : undefined;
  return {
    tuning,
    name: nameOfTuning(tuning, request.instrument),
    halfSteps,
    cost: played?.cost ?? Infinity,
    why: whyOf(request, tuning, notes, played),
    answer: played,
  };
}

/** A tuning of which no more than the least cost is known. */
export function ofCost(request: SuitRequest, tuning: Tuning, halfSteps: number, cost: number): Suited {
  const name = nameOfTuning(tuning, request.instrument);
  return { tuning, name, halfSteps, cost, why: whyOf(request, tuning, [], undefined), answer: undefined };
}

/** The neck and hand of the request, strung in a tuning. */
export function targetFor(request: SuitRequest, tuning: Tuning): Target {
  const { frets, capo, ...rest } = request.target;
  return { ...rest, fingerboard: createFingerboard(tuning, capo, frets) };
}

function whyOf(
  request: SuitRequest,
  tuning: Tuning,
  notes: readonly PassageNote[],
  answer: HandAnswer | undefined,
): SuitedWhy {
  const { steps, changed } = retuningEffort(request.start, tuning);
  const usual = { strings: usualStrings(request.instrument), name: undefined, text: '' };
  const above = stepsFrom(usual, tuning).map((by) => by ?? 0);
  return {
    hardest: answer?.measures.hardest?.why ?? '',
    openStrings: answer?.measures.openStrings ?? 0,
    ...soundOf(notes, answer?.placements ?? []),
    stepsOfRetuning: steps,
    stringsChanged: changed,
    raisesBy: Math.max(0, ...above),
    borne: isBorne(request, tuning),
  };
}

function isBorne(request: SuitRequest, tuning: Tuning): boolean {
  const bears = limitsOf(request);
  const lead = request.start.strings.length - tuning.strings.length;
  return stepsFrom(request.start, tuning).every(
    (by, index) => by !== undefined && (by === 0 || bears(index + lead, by)),
  );
}

/** What rings in a fingering: open notes that may ring on over the next moment, and open notes in the bass. */
function soundOf(
  notes: readonly PassageNote[],
  placements: readonly Placement[],
): Pick<SuitedWhy, 'ringing' | 'bassOnOpen'> {
  const byId = new Map(placements.map((placement) => [placement.id, placement]));
  const moments = new Map<number, PassageNote[]>();
  for (const note of notes) {
    const key = Math.round(note.onset * 1e9);
    const group = moments.get(key);
    if (group) group.push(note);
    else moments.set(key, [note]);
  }
  const isOpen = (note: PassageNote): boolean => {
    const place = byId.get(note.id);
    return note.midi !== undefined && place?.fret === 0 && place.touched === undefined;
  };
  const inOrder = [...moments].sort(([a], [b]) => a - b).map(([, group]) => group);
  let ringing = 0;
  let bassOnOpen = 0;
  inOrder.forEach((group, at) => {
    const taken = new Set((inOrder[at + 1] ?? []).map((note) => byId.get(note.id)?.string));
    ringing += group.filter((note) => isOpen(note) && !taken.has(byId.get(note.id)?.string)).length;
    const [bass] = group
      .filter(({ midi }) => midi !== undefined)
      .sort((a, b) => (a.midi ?? 0) - (b.midi ?? 0));
    if (bass && isOpen(bass)) bassOnOpen++;
  });
  return { ringing, bassOnOpen };
}
