import type { TextSpan } from '../../notation/parsedLine';
import type { System } from '../../notation/tabDocument';
import { counted, systemOf } from './putFrets';
import { addColumn, removeColumn } from './room';
import { saysTheSame, type Touched } from './sameMusic';
import { offsetOf } from './stringCell';

/** One way to write a key: signs in place of others on one line, with a column added or removed. */
export interface Draft {
  /** Column at which the signs stand. */
  readonly column: number;
  /** They take the place of as many; with an added column of one less. */
  readonly signs: string;
  readonly added?: number;
  readonly removed?: number;
  /** Columns that may change, before and after: the note or cell that is being written. */
  readonly before: TextSpan;
  readonly after: TextSpan;
}

export interface Written {
  readonly system: System;
  readonly draft: Draft;
  /** Whether a count row was written, so that nothing else moved. */
  readonly counted: boolean;
  /** Index that each line of the old system has now. */
  readonly lineOf: (line: number) => number;
}

/**
 * Writes the first of some drafts that leaves everything else in its time: one that leaves every column in its time before
 * one that leaves only what is written, which moves no column. Where none does, the count is written first.
 * @returns undefined when something else would move all the same
 */
export function writeDraft(system: System, line: number, drafts: readonly Draft[]): Written | undefined {
  const plain = firstOf(system, line, drafts);
  if (plain) return { ...plain, counted: false, lineOf: (at) => at };
  const column = drafts[0]?.column ?? 0;
  const time = system.reading.columnTimes[column];
  const under = time && counted(system, column, time);
  if (!under) return undefined;
  const oldRow = system.lines.findIndex((one) => one.kind === 'row' && one.row === 'count');
  const lineOf = (at: number): number => (oldRow < 0 || at < oldRow ? at + 1 : at);
  const done = firstOf(under, lineOf(line), drafts);
  return done && { ...done, counted: true, lineOf };
}

function firstOf(
  system: System,
  line: number,
  drafts: readonly Draft[],
): Pick<Written, 'system' | 'draft'> | undefined {
  const all = drafts.flatMap((draft) => {
    const texts = textsOf(system, line, draft);
    return texts ? [{ draft, now: systemOf(system, texts) }] : [];
  });
  for (const { draft, now } of all)
    if (saysTheSame(system, now, touchedOf(system, now, line, draft), true)) return { system: now, draft };
  // Where the times of columns change anyway, none is moved on top of that; under a count no time hangs on how many
  // columns there are.
  const isCounted = system.reading.timing === 'counted';
  const others = [...all].sort((a, b) => Number(movesColumns(a.draft)) - Number(movesColumns(b.draft)));
  for (const { draft, now } of others) {
    if (movesColumns(draft) && !isCounted) continue;
    if (saysTheSame(system, now, touchedOf(system, now, line, draft), false)) return { system: now, draft };
  }
  return undefined;
}

function movesColumns({ added, removed }: Draft): boolean {
  return added !== undefined || removed !== undefined;
}

function textsOf(system: System, at: number, draft: Draft): string[] | undefined {
  const line = system.lines[at];
  if (line?.kind !== 'string') return undefined;
  const { column, signs, added, removed } = draft;
  const start = offsetOf(line, column);
  // A column that is added gives the room for one of the signs.
  const end = offsetOf(line, column + signs.length - (added === undefined ? 0 : 1));
  const texts = added === undefined ? system.lines.map(({ text }) => text) : addColumn(system.lines, added);
  texts[at] = line.text.slice(0, start) + signs + line.text.slice(end);
  if (removed === undefined) return texts;
  return removeColumn(systemOf(system, texts).lines, removed);
}

function touchedOf(old: System, now: System, at: number, draft: Draft): Touched {
  const { added, removed } = draft;
  return {
    line: at,
    before: inOffsets(old, at, draft.before),
    after: inOffsets(now, at, draft.after),
    ...(added !== undefined && { added }),
    ...(removed !== undefined && { removed }),
  };
}

function inOffsets({ lines }: System, at: number, { start, end }: TextSpan): TextSpan {
  const line = lines[at];
  if (line?.kind !== 'string') return { start: 0, end: 0 };
  return { start: offsetOf(line, start), end: offsetOf(line, end) };
}
