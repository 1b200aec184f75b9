import type { Place } from '../service/records';
import { Refusal } from './refusal';

/**
 * `12:7`, line and column from 1, as a place from 0.
 * @throws {Refusal} for anything else
 */
export function readPlace(text: string): Place {
  const match = /^(\d+):(\d+)$/.exec(text);
  const [line, column] = [Number(match?.[1]), Number(match?.[2])];
  if (line > 0 && column > 0) return { line: line - 1, character: column - 1 };
  throw new Refusal(`“${text}” is no place: write line and column, counted from 1, such as 12:7.`);
}
