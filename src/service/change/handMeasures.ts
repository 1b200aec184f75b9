import type { TabDocument } from '../../notation/tabDocument';
import type { HandAnswer } from '../../playing/hand/handSearch';
import type { ChangeMeasures, MeasuredAt } from '../serviceApi';
import { isOpenAt, type PassageEntry } from './placing';
import type { PlayedHand, Way } from './ways';

/**
 * What the hands have to do in a way to play a passage; undefined where no hand of the model plays all of it, as a text
 * that stays as it is may ask.
 */
export function measuresOf(document: TabDocument, way: Way): ChangeMeasures | undefined {
  const hands = way.hands.flatMap((hand) => (hand.answer ? [{ ...hand, answer: hand.answer }] : []));
  if (hands.length === 0 || hands.length < way.hands.length) return undefined;
  const sum = (figure: (answer: HandAnswer) => number): number =>
    hands.reduce((all, { answer }) => all + figure(answer), 0);
  const widestStretch = widest(document, hands, ({ measures }) => measures.widestStretch);
  const longestTravel = widest(document, hands, ({ measures }) => measures.longestTravel);
  const hardest = hardestOf(document, hands);
  return {
    cost: Math.round(sum(({ cost }) => cost) * 1000) / 1000,
    highestFret: Math.max(0, ...hands.map(({ answer }) => answer.measures.highestFret)),
    ...(widestStretch && { widestStretch }),
    ...(longestTravel && { longestTravel }),
    openStrings: {
      before: way.entries.filter(isOpen).length,
      after: sum(({ measures }) => measures.openStrings),
    },
    ...(hardest && { hardest }),
    cutNotes: sum(({ measures }) => measures.cutNotes),
  };
}

/** Whether a note stands on an open string. */
function isOpen({ slice, note }: PassageEntry): boolean {
  if (note.kind !== 'fretted' || note.fret === undefined || note.pitches.length === 0) return false;
  return isOpenAt(slice.system.header, note.string, note.fret);
}

interface Played extends PlayedHand {
  readonly answer: HandAnswer;
}

function widest(
  document: TabDocument,
  hands: readonly Played[],
  figure: (answer: HandAnswer) => { readonly millimetres: number; readonly id: number } | undefined,
): MeasuredAt | undefined {
  let best: MeasuredAt | undefined;
  for (const hand of hands) {
    const one = figure(hand.answer);
    const at = one && placeOf(document, hand, one.id);
    if (one && at && one.millimetres > (best?.millimetres ?? 0))
      best = { millimetres: Math.round(one.millimetres), ...at };
  }
  return best;
}

function hardestOf(document: TabDocument, hands: readonly Played[]): ChangeMeasures['hardest'] {
  let most = 0;
  let found: ChangeMeasures['hardest'];
  for (const hand of hands) {
    const { hardest } = hand.answer.measures;
    const at = hardest && placeOf(document, hand, hardest.id);
    if (!hardest || !at || hardest.cost <= most) continue;
    most = hardest.cost;
    found = { ...at, why: hardest.why };
  }
  return found;
}

function placeOf(
  document: TabDocument,
  { task }: PlayedHand,
  id: number,
): { readonly part?: string; readonly bar: number } | undefined {
  const entry = task.group.entries[id];
  if (!entry) return undefined;
  const { part } = entry.slice.system.header;
  return { bar: entry.bar, ...(part !== undefined && document.parts.length > 1 && { part }) };
}

/** The measures in short sentences. */
export function measureRemarks(measures: ChangeMeasures | undefined): string[] {
  if (!measures) return [];
  const { highestFret, widestStretch, longestTravel, openStrings, hardest, cutNotes } = measures;
  const figures = [
    `Highest fret ${highestFret}.`,
    ...(widestStretch ? [`Widest stretch ${widestStretch.millimetres} mm, ${where(widestStretch)}.`] : []),
    ...(longestTravel
      ? [`Longest travel of the hand ${longestTravel.millimetres} mm, ${where(longestTravel)}.`]
      : []),
    `Open strings: ${openStrings.before} before, ${openStrings.after} after.`,
  ];
  return [
    figures.join(' '),
    ...(hardest ? [`The hardest moment is in ${where(hardest)}: ${hardest.why}.`] : []),
    ...(cutNotes > 0
      ? [
          `${cutNotes} ${cutNotes === 1 ? 'note that should ring on is' : 'notes that should ring on are'} cut short.`,
        ]
      : []),
    LEAST_COST,
  ];
}

/** What the answer is, and what it is not. */
export const LEAST_COST =
  'Least cost under Pegbox’s table of constants; not a claim of what a good player writes.';

function where({ part, bar }: { readonly part?: string; readonly bar: number }): string {
  return part === undefined ? `bar ${bar}` : `${part}, bar ${bar}`;
}

/**
 * What sets a way apart from the best one: the first bar that is played elsewhere, and where.
 * @example 'bar 3 around fret 5'
 */
export function wayTitle(way: Way, best: Way): string {
  for (const [i, { task, answer }] of way.hands.entries()) {
    const other = best.hands[i]?.answer;
    if (!answer || !other || answer === other) continue;
    const byBar = new Map<number, number[]>();
    for (const [id, position] of answer.positions) {
      const bar = task.group.entries[id]?.bar;
      if (bar === undefined || answer.fingers.get(id) === 0) continue;
      if (position === other.positions.get(id) && other.fingers.get(id) !== 0) continue;
      const list = byBar.get(bar);
      if (list) list.push(position);
      else byBar.set(bar, [position]);
    }
    const [first] = [...byBar].sort(([a], [b]) => a - b);
    if (!first) continue;
    const [bar, positions] = first;
    const middle = [...positions].sort((a, b) => a - b)[positions.length >> 1] ?? 0;
    return `bar ${bar} around fret ${Math.max(1, middle)}`;
  }
  return 'other strings';
}
