import type { Range } from '../service/records';
import { WIDE_REWRITES, type WideRewriteId } from '../service/mends/wideRewrite';
import { fromRange } from './protocolConverter';

/** What an offered change carries until it is taken. */
export interface WideRewriteData {
  readonly uri: string;
  readonly range: Range;
  readonly id: WideRewriteId;
}

/** What comes back from a client; undefined for anything that this server did not send. */
export function readWideRewrite(data: unknown): WideRewriteData | undefined {
  const { uri, range, id } = asRecord(data);
  const known = WIDE_REWRITES.find((name) => name === id);
  const { start, end } = asRecord(range);
  if (typeof uri !== 'string' || known === undefined || !isPosition(start) || !isPosition(end))
    return undefined;
  return { uri, range: fromRange({ start, end }), id: known };
}

function isPosition(value: unknown): value is { line: number; character: number } {
  const { line, character } = asRecord(value);
  return Number.isInteger(line) && Number.isInteger(character);
}

function asRecord(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? { ...value } : {};
}
