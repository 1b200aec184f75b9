import type { SuitedTuning } from '../service/serviceApi';
import { halfStepText } from './halfStepText';

/** A count with its word: `1 string`, `2 strings`. */
function count(number: number, one: string, more = `${one}s`): string {
  return `${number} ${number === 1 ? one : more}`;
}

/** What a tuning is called; its notes where it has no name. */
export function suitedName({ name, notes, tuning }: SuitedTuning): string {
  return name ?? (notes === '' ? tuning : notes);
}

/** The retuning in figures: `3 strings, 6 half steps`; `as it is` for none. */
export function retuningText({ stringsChanged, stepsOfRetuning }: SuitedTuning): string {
  if (stringsChanged === 0) return 'as it is';
  return `${count(stringsChanged, 'string')}, ${count(stepsOfRetuning, 'half step')}`;
}

/** The cost with one decimal, or that there is none. */
export function costText({ cost }: SuitedTuning): string {
  return cost === null ? 'leaves a note out' : `cost ${cost.toFixed(1)}`;
}

/** What rings, in a few words: `9 open notes (4 in the bass), 7 ring on`. */
export function ringText({ openStrings, ringing, bassOnOpen }: SuitedTuning): string {
  if (openStrings === 0) return 'no open notes';
  const bass = bassOnOpen > 0 ? ` (${bassOnOpen} in the bass)` : '';
  return `${count(openStrings, 'open note')}${bass}${ringing > 0 ? `, ${ringing} ring on` : ''}`;
}

/** How the passage is moved in it; nothing at pitch. */
export function moveText({ halfSteps }: SuitedTuning): string {
  return halfSteps === 0 ? '' : `passage ${halfStepText(halfSteps)}`;
}
