import type { TabDocument } from '../../notation/tabDocument';
import { measurePlacement, type HandAnswer } from '../../playing/hand/handSearch';
import type { PassageNote, Placement } from '../../playing/passage';
import type { Settings } from '../records';
import type { Change, ChangeResult, Compared, RefingerRequest, Report } from '../serviceApi';
import { changeOf, NOTHING_THERE, wideningCuts, type Attempt } from './change';
import { handTask, play, playBest, type HandTask, type HandWish } from './handTask';
import { measureRemarks, measuresOf, wayTitle } from './handMeasures';
import { entriesOf, isOpenAt, passagesOf, unplacedNotes } from './placing';
import { notesOutOf, verb } from './remarks';
import { hasStrings, slicesIn, type Slice } from './slices';
import { troubleIn } from './troubles';
import { placementsOf, waysFrom, type FingeredHand, type Way } from './ways';

type Objective = RefingerRequest['objective'];

/**
 * Another fingering in the tuning that a passage stands in. Each hand's passage changes only where it becomes better in
 * what was asked, so that the whole is never worse in it than the text was.
 */
export function refinger(document: TabDocument, request: RefingerRequest, settings: Settings): ChangeResult {
  const slices = slicesIn(document, request.range);
  if (!slices.some(hasStrings)) return { error: NOTHING_THERE };
  const trouble = troubleIn(document, slices) ?? stringTrouble(slices, request);
  if (trouble) return { error: trouble };
  const known = new Map<readonly Slice[], Refingered>();
  const work = (wider: readonly Slice[]): Refingered => {
    const found = known.get(wider) ?? refingered(document, wider, request, settings);
    known.set(wider, found);
    return found;
  };
  const first = work(slices);
  if ('error' in first) return first;
  if (!first.better) return asItIs(first);
  const write = (wider: readonly Slice[], which: number): Attempt => {
    const found = work(wider);
    if ('error' in found) return found;
    const way = found.ways[which] ?? found.ways[0];
    return writeFingering(document, wider, way, comparedOf(found, way), settings);
  };
  const best = wideningCuts(document, slices, (wider) => write(wider, 0));
  if ('error' in best) return best;
  const [lost] = best.report.unplaced;
  if (lost)
    return {
      error: `The new fingering cannot be written: ${lost.name} in bar ${lost.bar} would be left out; choose fewer bars.`,
    };
  const [main, ...others] = first.ways;
  const alternatives = others.flatMap((way, i) => {
    const variant = wideningCuts(document, slices, (wider) => write(wider, i + 1));
    const whole = !('error' in variant) && variant.report.unplaced.length === 0;
    return whole ? [{ ...variant, title: wayTitle(way, main) }] : [];
  });
  return { ...best, ...(alternatives.length > 0 && { alternatives }) };

  function asItIs({ ways: [way], objective }: Fingered): Change {
    const report = reportOf(document, way, comparedOf(first as Fingered, way), new Set());
    const already = `The text is already ${BEST[objective]}; nothing changes.`;
    return { edits: [], report: { ...report, remarks: [already, ...report.remarks.slice(1)] } };
  }
}

const BEST: Readonly<Record<Objective, string>> = {
  lower: 'as low on the neck as the hand can play it',
  open: 'on as many open strings as the hand can play it',
  strings: 'on those strings',
  hardest: 'as easy at its hardest step as the hand can play it',
  closed: 'as closed as the hand can play it',
};

const FIGURE: Readonly<Record<Objective, string>> = {
  lower: 'the sum of the frets',
  open: 'notes on open strings',
  strings: 'notes on the strings asked for',
  hardest: 'the cost of the hardest step',
  closed: 'notes on open strings',
};

interface Fingered {
  readonly objective: Objective;
  readonly ways: readonly [Way, ...Way[]];
  /** Whether anything became better. */
  readonly better: boolean;
  /** The figure of the text; undefined where the model's hand cannot play it. */
  readonly before: number | undefined;
  readonly figure: (way: Way) => number;
}

type Refingered = Fingered | { readonly error: string };

function stringTrouble(
  slices: readonly Slice[],
  { objective, strings }: RefingerRequest,
): string | undefined {
  if (objective !== 'strings') return undefined;
  const most = Math.max(...slices.map(({ system }) => system.header.tuning.strings.length));
  if (!strings || strings.length === 0)
    return `Give the strings to play on by their numbers, 1 to ${most}, such as 3 2 1.`;
  const wrong = strings.find((number) => !Number.isInteger(number) || number < 1 || number > most);
  return wrong === undefined ? undefined : `There is no string ${wrong}; the strings are 1 to ${most}.`;
}

function refingered(
  document: TabDocument,
  slices: readonly Slice[],
  request: RefingerRequest,
  settings: Settings,
): Refingered {
  const { objective } = request;
  const entries = entriesOf(document, slices);
  const wish = wishFor(request);
  const hands: FingeredHand[] = [];
  const befores: (number | undefined)[] = [];
  let better = false;
  for (const group of passagesOf(entries, (header) => header)) {
    const task = handTask(document, group, () => 0, wish, settings);
    const free = { ...task, options: { ...task.options, openStrings: true, strings: undefined } };
    const text = placementsOf(task);
    const measured = measurePlacement(task.notes, text, task.target, free.options);
    const before = figureOf(request, task, text, measured);
    befores.push(before);
    const notes = objective === 'closed' ? stoppedWhereTheyCan(free) : task.notes;
    const found = play(objective === 'closed' ? free : task, notes);
    const [best] = found;
    if (objective === 'strings' && best && best.unplaced.length > 0)
      return { error: notOnStrings(document, task, best, request) };
    const good = found.filter((answer) => {
      const after = figureOf(request, task, answer.placements, answer);
      return answer.unplaced.length === 0 && after !== undefined && isBetter(objective, after, before);
    });
    if (good.length > 0) better = true;
    const stays = good.length === 0;
    hands.push({ task, answers: stays ? [measured] : good, stays, shift: () => 0, reasons: new Map() });
  }
  return {
    objective,
    ways: waysFrom(entries, hands),
    better,
    before: befores.includes(undefined)
      ? undefined
      : total(
          objective,
          befores.map((one) => one ?? 0),
        ),
    figure: (way) =>
      total(
        objective,
        way.hands.map((hand) => figureOfHand(request, hand)),
      ),
  };
}

function figureOfHand(request: RefingerRequest, { task, answer, stays }: Way['hands'][number]): number {
  const places = stays ? placementsOf(task) : (answer?.placements ?? []);
  return figureOf(request, task, places, answer) ?? 0;
}

/** The dearest of several hands, or their sum. */
function total(objective: Objective, figures: readonly number[]): number {
  return objective === 'hardest' ? Math.max(0, ...figures) : figures.reduce((sum, one) => sum + one, 0);
}

/** So dear that no saving of the hand's outweighs it: what was asked comes first, then the least cost. */
const FIRST = 1000;

function wishFor({ objective, strings, alternatives = 1 }: RefingerRequest): HandWish {
  const wish = { alternatives: Math.min(3, Math.max(1, Math.trunc(alternatives))) };
  switch (objective) {
    case 'lower':
      return { ...wish, weights: { lowOnNeck: FIRST } };
    case 'open':
      return { ...wish, weights: { moreOpen: FIRST } };
    case 'strings':
      return { ...wish, strings: strings ?? [] };
    case 'hardest':
      return { ...wish, objective: 'hardest' };
    case 'closed':
      return wish;
  }
}

/**
 * The notes, each of which must be stopped as far as the hand can: one that only an open string sounds stays open, and
 * so do the notes of a moment that it cannot stop together.
 */
function stoppedWhereTheyCan(task: HandTask): readonly PassageNote[] {
  const open = new Set<number>();
  const notes = (): PassageNote[] =>
    task.notes.map((note) =>
      note.need === 'any' && note.midi !== undefined && !open.has(note.id)
        ? { ...note, need: 'stopped' }
        : note,
    );
  for (;;) {
    const stopped = notes();
    const { unplaced } = playBest(task, stopped);
    const onsets = new Set(unplaced.map(({ id }) => task.notes.find((note) => note.id === id)?.onset));
    const left = unplaced.filter(({ id }) => !open.has(id)).map(({ id }) => id);
    const free =
      left.length > 0
        ? left
        : task.notes.filter(({ id, onset }) => onsets.has(onset) && !open.has(id)).map(({ id }) => id);
    if (unplaced.length === 0 || free.length === 0) return stopped;
    for (const id of free) open.add(id);
  }
}

/** What is to become better, of some places; undefined where the model's hand cannot play them and that is asked. */
function figureOf(
  { objective, strings = [] }: RefingerRequest,
  { notes, group }: HandTask,
  places: readonly Placement[],
  answer: HandAnswer | undefined,
): number | undefined {
  const byId = new Map(places.map((place) => [place.id, place]));
  const plain = notes.filter(
    ({ midi, need }) => midi !== undefined && (need === 'any' || need === 'stopped'),
  );
  const count = (test: (place: Placement) => boolean): number =>
    plain.filter(({ id }) => {
      const place = byId.get(id);
      return place !== undefined && test(place);
    }).length;
  const isOpen = ({ string, fret }: Placement): boolean => isOpenAt(group.header, string, fret);
  switch (objective) {
    case 'lower':
      return plain.reduce((sum, { id }) => {
        const place = byId.get(id);
        return sum + (place && !isOpen(place) ? place.fret : 0);
      }, 0);
    case 'open':
    case 'closed':
      return count(isOpen);
    case 'strings':
      return count(({ string }) => strings.includes(string));
    case 'hardest':
      return answer && Math.round((answer.measures.hardest?.cost ?? 0) * 1000) / 1000;
  }
}

function isBetter(objective: Objective, after: number, before: number | undefined): boolean {
  if (before === undefined) return true;
  return objective === 'open' || objective === 'strings' ? after > before : after < before;
}

function notOnStrings(
  document: TabDocument,
  { group }: HandTask,
  { unplaced }: HandAnswer,
  { strings = [] }: RefingerRequest,
): string {
  const out = new Set(unplaced.map(({ id }) => group.entries[id]));
  const [first] = unplacedNotes(
    document,
    group.entries,
    (entry) => (out.has(entry) ? '' : undefined),
    new Set(),
  );
  const count = unplaced.length;
  const where = first ? ` (the first is ${first.name} in bar ${first.bar})` : '';
  return `On ${strings.length === 1 ? 'string' : 'strings'} ${strings.join(' ')} ${count} ${count === 1 ? 'note has' : 'notes have'} no place${where}; give more strings, or choose fewer bars.`;
}

function comparedOf({ objective, before, figure }: Fingered, way: Way): Compared {
  return { what: FIGURE[objective], ...(before !== undefined && { before }), after: figure(way) };
}

function writeFingering(
  document: TabDocument,
  slices: readonly Slice[],
  way: Way,
  compared: Compared,
  settings: Settings,
): Attempt {
  return changeOf(
    document,
    slices,
    { header: ({ system }) => system.header, place: way.at, keepLabels: true },
    (unwritten) => reportOf(document, way, compared, unwritten),
    settings,
  );
}

function reportOf(
  document: TabDocument,
  way: Way,
  compared: Compared,
  unwritten: ReadonlySet<string>,
): Report {
  const unplaced = unplacedNotes(document, way.entries, way.reasonOf, unwritten);
  const notesIn = way.entries.length;
  const kept = notesIn - unplaced.length;
  const measures = measuresOf(document, way);
  const { what, before, after } = compared;
  return {
    notesIn,
    kept,
    moved: 0,
    unplaced,
    remarks: [
      `${notesOutOf(kept, notesIn)} ${verb(kept, notesIn, 'keep their', 'keeps its')} pitch.`,
      before === undefined
        ? `${capital(what)}: ${after}; the model’s hand cannot play the text as it stood.`
        : `${capital(what)}: ${before} before, ${after} after.`,
      ...measureRemarks(measures),
    ],
    ...(measures && { measures }),
    compared,
  };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
