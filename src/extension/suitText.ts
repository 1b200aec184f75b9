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

/** What rings, in a few words: `9 open notes, 7 ring on, bass open 4 times`. */
export function ringText({ openStrings, ringing, bassOnOpen }: SuitedTuning): string {
  const bass = bassOnOpen === 1 ? 'once' : bassOnOpen === 2 ? 'twice' : `${bassOnOpen} times`;
  return [
    openStrings === 0 ? 'no open notes' : count(openStrings, 'open note'),
    ...(ringing > 0 ? [`${ringing} ring on`] : []),
    ...(bassOnOpen > 0 ? [`bass open ${bass}`] : []),
  ].join(', ');
}

/** How the passage is moved in it; nothing at pitch. */
export function moveText({ halfSteps }: SuitedTuning): string {
  return halfSteps === 0 ? '' : `passage ${halfStepText(halfSteps)}`;
}
