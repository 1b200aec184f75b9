import { eitherOf } from '../instrument/nameMatching';
import type { Failed, Result } from '../music/result';
import { Refusal } from './refusal';

/**
 * The value of a reading.
 * @param option whose value it is, such as `--tuning`; undefined for the operand
 * @throws {Refusal} with the reader's own sentence and what it offers
 */
export function readable<T>(option: string | undefined, result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Refusal(`${option === undefined ? '' : `${option}: `}${sentenceOf(result)}`);
}

function sentenceOf({ error: { message, suggestions } }: Failed): string {
  if (suggestions.length === 0 || suggestions.some((value) => message.includes(value))) return message;
  return `${message} Did you mean ${eitherOf(suggestions.slice(0, 3))}?`;
}
