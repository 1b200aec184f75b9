import { retuningCaution } from '../../instrument/retuningCaution';
import { formatTuningNotes } from '../../instrument/tuningFormat';
import type { TabDocument } from '../../notation/tabDocument';
import { suit as search, USUAL_SUIT, type SuitAnswer, type Suited } from '../../playing/suit/suit';
import { NOTHING_THERE } from '../change/change';
import { LEAST_COST } from '../change/handMeasures';
import { handTask, type HandTask } from '../change/handTask';
import { entriesOf, sameNeck } from '../change/placing';
import { halfStepWords } from '../change/remarks';
import { hasStrings, slicesIn, type Slice } from '../change/slices';
import { troubleIn } from '../change/troubles';
import type { Settings } from '../records';
import type { ServiceError, SuitedTuning, SuitRequest, SuitResult, SuitStep } from '../serviceApi';
import { stepsInWords } from '../tuningChoices';

/** The search covers as many half steps each way at most. */
const FARTHEST = 3;

/**
 * Which tuning makes a passage easiest: the trade's tunings ranked by the hand's least cost, and all retunings of each
 * string within some half steps and within what the string bears. Works in slices of some 10 ms, one a `next()`.
 */
export function* suit(
  document: TabDocument,
  request: SuitRequest,
  settings: Settings,
): Generator<SuitStep, SuitResult | ServiceError> {
  const { within = USUAL_SUIT.within, anyKey = USUAL_SUIT.anyKey, keep = USUAL_SUIT.keep } = request;
  if (!Number.isInteger(within) || within < 0 || within > FARTHEST)
    return { error: `Give how far each string may be retuned as 0 to ${FARTHEST} half steps; 2 is usual.` };
  if (!Number.isInteger(keep) || keep < 1)
    return { error: 'Give how many tunings are wanted as a number from 1; 10 is usual.' };
  const slices = slicesIn(document, request.range).filter(hasStrings);
  const task = taskOf(document, slices, settings);
  if ('error' in task) return task;
  const { header } = task.group;
  const { scaleLength, reach, slide } = task.target;
  const answer = yield* search({
    notes: task.notes,
    start: header.tuning,
    instrument: header.instrument,
    target: { scaleLength, reach, slide, frets: header.frets, capo: header.capo },
    options: task.options,
    within,
    anyKey,
    keep,
  });
  return resultOf(answer, task, within, anyKey);
}

/** The passage as one hand's; a sentence where it is not. */
function taskOf(
  document: TabDocument,
  slices: readonly Slice[],
  settings: Settings,
): HandTask | ServiceError {
  const [first] = slices;
  if (!first) return { error: NOTHING_THERE };
  const trouble = troubleIn(document, slices);
  if (trouble) return { error: trouble };
  const { header } = first.system;
  const headers = slices.map(({ system }) => system.header);
  if (headers.some(({ part }) => part !== header.part))
    return { error: 'The passage holds several parts; choose a passage of one of them.' };
  if (headers.some((other) => other.instrument !== header.instrument || !sameNeck(other, header)))
    return { error: 'The passage changes its tuning or capo; choose bars that stand in one.' };
  const entries = entriesOf(document, slices);
  if (!entries.some(({ note }) => note.pitches.length > 0))
    return { error: 'There are no notes with a pitch in the passage; choose bars that have some.' };
  return handTask(document, { before: header, header, entries }, () => 0, {}, settings);
}

function resultOf(answer: SuitAnswer, { group }: HandTask, within: number, anyKey: boolean): SuitResult {
  const { tuning } = group.header;
  const plain = (suited: Suited): SuitedTuning => suitedTuning(suited, tuning);
  const shown = [...answer.best, ...answer.byStringsChanged.map(({ suited }) => suited)];
  const raised = Math.max(0, ...shown.map(({ why }) => why.raisesBy));
  const caution = retuningCaution(raised, 'Some of these tunings raise');
  return {
    here: answer.here ? plain(answer.here) : null,
    named: answer.named.map(plain),
    best: answer.best.map(plain),
    byStringsChanged: answer.byStringsChanged.map(({ changed, suited }) => ({
      changed,
      tuning: plain(suited),
    })),
    evaluated: answer.evaluated,
    unplayable: answer.unplayable,
    ruledOut: answer.ruledOut,
    total: answer.total,
    remarks: remarksOf(answer, formatTuningNotes(tuning), within, anyKey),
    cautions: caution ? [caution] : [],
  };
}

function suitedTuning(
  { tuning, name, halfSteps, cost, why }: Suited,
  start: Parameters<typeof stepsInWords>[0],
): SuitedTuning {
  const notes = formatTuningNotes(tuning);
  const playable = Number.isFinite(cost);
  return {
    tuning: name ?? notes,
    name: name ?? null,
    notes,
    steps: stepsInWords(start, tuning),
    halfSteps,
    cost: playable ? Math.round(cost * 1000) / 1000 : null,
    stringsChanged: why.stringsChanged,
    stepsOfRetuning: why.stepsOfRetuning,
    openStrings: why.openStrings,
    ringing: why.ringing,
    bassOnOpen: why.bassOnOpen,
    hardest: why.hardest,
    borne: why.borne,
    why: playable ? whyWords(why, halfSteps) : 'Some notes would be left out.',
  };
}

function whyWords(why: Suited['why'], halfSteps: number): string {
  const parts = [
    ...(halfSteps === 0 ? [] : [`moved ${halfStepWords(halfSteps)}`]),
    `${why.openStrings} ${why.openStrings === 1 ? 'note' : 'notes'} on open strings, ${why.ringing} of them free to ring on`,
    `the bass open at ${why.bassOnOpen} ${why.bassOnOpen === 1 ? 'moment' : 'moments'}`,
    ...(why.hardest === '' ? [] : [`hardest: ${why.hardest}`]),
    ...(why.borne ? [] : ['a string goes beyond what it is reckoned to bear']),
  ];
  const sentence = `${parts.join('; ')}.`;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

function remarksOf(
  { best, named, evaluated, unplayable, ruledOut, total }: SuitAnswer,
  start: string,
  within: number,
  anyKey: boolean,
): string[] {
  const key = anyKey ? ', in any key' : ', at pitch';
  const limits = `each string within ${within} half ${within === 1 ? 'step' : 'steps'} of ${start} and within what it is reckoned to bear${key}`;
  const playable = evaluated + ruledOut;
  const share = playable === 0 ? 0 : Math.round((100 * ruledOut) / playable);
  const plays = named.some(({ cost }) => Number.isFinite(cost));
  return [
    ...(best.length === 0 && !plays
      ? [
          'No tuning on offer plays every note; convert the passage to see which notes have no place, or simplify it.',
        ]
      : []),
    `Best for this cost, this passage, these limits: ${limits}.`,
    `Of ${total} retunings ${evaluated} were worked out; ${unplayable} would leave a note out; of those that play every note a bound ruled out ${ruledOut} (${share} %) as no better.`,
    LEAST_COST,
  ];
}
