import { carriesOver } from '../../instrument/retuning/carriesOver';
import { retuningOrder, type RetuningStep } from '../../instrument/retuning/retuningOrder';
import { stringChanges, type StringChange } from '../../instrument/retuning/stringChanges';
import { formatNoteList } from '../../instrument/noteList';
import { formatTuning, formatTuningNotes } from '../../instrument/tuningFormat';
import type { Tuning } from '../../instrument/tuning';
import type { Header } from '../../notation/header';
import { capital, listed } from '../hover/text';
import { carriesOverWords } from './carriesOverWords';
import { checkSentence, tellCheck } from './checkWords';
import type { FromTuning } from './fromTuning';
import { movedBy, noteWithHertz, stringsWords, tuningWords } from './noteText';
import type { SheetPullOf } from './pull';
import { pullAnswer } from './pullWords';
import { retuningCautions } from './retuningCautions';
import type { SheetRetuning, SheetStep, SheetStringChange } from './sheetAnswer';

const LAST_CHECK =
  'Check every string again, the lowest-placed one first: the neck has moved under the new pull, and the strings with it';

/**
 * The way from another tuning into the one in force: each string, the steps in order, what carries over, cautions.
 */
export function retuningAnswer(
  { tuning: from, why }: FromTuning,
  header: Header,
  { pullOf, inNewtons }: SheetPullOf,
): SheetRetuning {
  const { tuning: to, frets, instrument, referencePitch } = header;
  const changes = stringChanges(from, to);
  const { steps, start } = retuningOrder(changes, pullOf, frets);
  const same = steps.length === 0;
  const came = tuningWords(from.name, formatTuningNotes(from));
  return {
    from: {
      name: from.name ?? null,
      notes: formatTuningNotes(from),
      value: formatTuning(from, instrument),
      why,
    },
    same,
    words: same ? sameWords(came, why, header) : `From ${came}: ${turnsInWords(changes)}`,
    strings: changes.map(tellChange),
    steps: steps.map((step) => tellStep(step, to, referencePitch, start)),
    lastCheck: same ? '' : LAST_CHECK,
    pull: pullAnswer(
      start,
      steps.map(({ pull }) => pull),
      inNewtons,
    ),
    carriesOver: carriesOverWords(carriesOver(changes, from), changes),
    cautions: retuningCautions(changes, header),
  };
}

function sameWords(came: string, why: FromTuning['why'], { instrument }: Header): string {
  const which = why === 'usual' ? `the usual tuning of the ${instrument.name}` : came;
  return `This is ${which} already, so there is nothing to turn`;
}

/**
 * What is to be turned, in a sentence; of equal moves the strings together.
 * @example turnsInWords(changes) // 'raise strings 5 and 4 by 2 half steps and string 3 by 1 half step'
 */
export function turnsInWords(changes: readonly StringChange[]): string {
  const parts = [
    ...turned(changes, 'off', 'take', () => ' off'),
    ...turned(changes, 'down', 'lower', by),
    ...turned(changes, 'exchange', 'exchange', () => ''),
    ...turned(changes, 'up', 'raise', by),
    ...turned(changes, 'add', 'put', () => ' on'),
  ];
  return parts.join('; ');
}

const by = (steps: number): string => ` by ${movedBy(steps)}`;

function turned(
  changes: readonly StringChange[],
  kind: StringChange['kind'],
  verb: string,
  how: (halfSteps: number) => string,
): readonly string[] {
  const groups = new Map<number, number[]>();
  for (const change of changes) {
    if (change.kind !== kind) continue;
    groups.set(change.halfSteps, [...(groups.get(change.halfSteps) ?? []), change.number]);
  }
  if (groups.size === 0) return [];
  return [`${verb} ${listed([...groups].map(([steps, numbers]) => stringsWords(numbers) + how(steps)))}`];
}

function tellChange(change: StringChange): SheetStringChange {
  const { number, from, to, kind } = change;
  return {
    number,
    from: from ? formatNoteList([from]) : null,
    to: to ? formatNoteList([to]) : null,
    halfSteps: kind === 'up' || kind === 'down' || kind === 'stays' ? change.halfSteps : null,
    change: kind,
    words: changeWords(change),
  };
}

function changeWords({ kind, halfSteps: steps }: StringChange): string {
  switch (kind) {
    case 'stays':
      return 'stays';
    case 'add':
      return 'added';
    case 'off':
      return 'off';
    case 'exchange':
      return 'another string';
    case 'down':
    case 'up':
      return `${kind} ${movedBy(steps)}`;
  }
}

function tellStep(
  { change, check, pull }: RetuningStep,
  to: Tuning,
  referencePitch: number,
  start: number,
): SheetStep {
  const { number, kind } = change;
  const turns = kind === 'down' || kind === 'up';
  return {
    number,
    change: kind === 'stays' ? 'down' : kind,
    halfSteps: turns ? change.halfSteps : null,
    words: stepWords(change, referencePitch),
    check:
      kind === 'off'
        ? ''
        : check
          ? checkSentence(check, to)
          : 'No string in tune gives it: set it with a tuner or a fork',
    by: check ? tellCheck(check, to) : null,
    pull: start > 0 ? Math.round((pull / start) * 1e4) / 1e4 : 1,
  };
}

function stepWords(
  { kind, number, from, to, halfSteps: steps }: StringChange,
  referencePitch: number,
): string {
  const course = (to ?? from)?.pitches.length === 2;
  const which = course ? `both strings of course ${number}` : `string ${number}`;
  const goal = to ? noteWithHertz(to, referencePitch) : '';
  const was = from ? formatNoteList([from]) : '';
  switch (kind) {
    case 'off':
      return `Let ${which}, ${was}, down and take it off`.replace('it off', course ? 'them off' : 'it off');
    case 'add':
      return `Put ${which} on and bring ${course ? 'them' : 'it'} up slowly to ${goal}`;
    case 'exchange':
      return capital(
        `take ${which}, ${was}, off; put on ${course ? 'strings' : 'one'} made for the pitch and bring ${course ? 'them' : 'it'} up slowly to ${goal}`,
      );
    case 'down':
    case 'up':
    case 'stays': {
      const verb = kind === 'up' ? 'Raise' : 'Lower';
      const far = steps === 0 ? '' : ` by ${movedBy(steps)}`;
      return `${verb} ${which}${kind === 'up' ? ' slowly' : ''}${far}, from ${was} to ${goal}`;
    }
  }
}
