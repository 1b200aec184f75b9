import { sameReading } from '../../notation/sameReading';
import { parseLine } from '../../notation/parseLine';
import type { ParsedLine } from '../../notation/parsedLine';
import type { SystemReading } from '../../notation/reading';
import { readSystem } from '../../notation/systemReading';
import type { System } from '../../notation/tabDocument';
import { endsMadeEqual } from './equalEnds';
import { withPlainSigns } from './plainSigns';
import { withPrefixes, withPrefixesInPlace } from './prefixes';
import { rowsAligned } from './alignedRows';
import { signsStraight } from './straightSigns';

/** A system's lines and what they are read as. */
export interface Draft {
  readonly lines: readonly ParsedLine[];
  readonly reading: SystemReading;
}

/** New texts of a draft's lines; the draft's own where a step has nothing to do. */
export type Step = (draft: Draft) => readonly (readonly string[])[];

/**
 * What is set in order, one after the other; each step offers ways, the fullest first, and the first that reads as
 * before is taken. Labels come last: they go by what stands before the bars of all lines.
 */
const STEPS: readonly Step[] = [withPlainSigns, signsStraight, endsMadeEqual, rowsAligned];

/** One round is enough for nearly all; a second and third find nothing to do, or what the first made room for. */
const MOST_ROUNDS = 4;

/**
 * The lines of a system in order, or undefined where they are so already or cannot be made so with every note, onset
 * and mark where it was. The lines of the answer would come back as they are.
 * @param anchored whether text beside the system keeps to its columns, so that its first bar lines must not move
 */
export function formatSystem(system: System, anchored = false): readonly string[] | undefined {
  const steps = [...STEPS, anchored ? withPrefixesInPlace : withPrefixes];
  const draft = atOnce(system, steps) ?? stepByStep(system, steps);
  const after = draft?.lines.map(({ text }) => text);
  return after && !sameTexts(after, textsOf(system)) ? after : undefined;
}

/** All steps, believed after one reading of what they make; undefined where that does not say the same. */
function atOnce(system: System, steps: readonly Step[]): Draft | undefined {
  const lines = steps.reduce<readonly ParsedLine[]>(
    (before, step) => parsed(step({ lines: before, reading: system.reading })[0], before),
    system.lines,
  );
  if (lines === system.lines) return system;
  const draft = readDraft(lines, system, system);
  if (!draft || !saysTheSame(system, system, draft)) return undefined;
  const isDone = steps.every((step) => parsed(step(draft)[0], draft.lines) === draft.lines);
  return isDone ? draft : undefined;
}

/** One step after the other, each believed by itself, until there is nothing more to do. */
function stepByStep(system: System, steps: readonly Step[]): Draft | undefined {
  let draft: Draft = system;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const start = draft;
    for (const step of steps) draft = take(step(draft), draft, system);
    if (draft === start) return draft;
  }
  return undefined;
}

function take(ways: readonly (readonly string[])[], draft: Draft, system: System): Draft {
  for (const texts of ways) {
    const lines = parsed(texts, draft.lines);
    const next = lines === draft.lines ? undefined : readDraft(lines, draft, system);
    if (next && saysTheSame(system, draft, next)) return next;
  }
  return draft;
}

/** Texts as lines; the old lines themselves where nothing is different. */
function parsed(texts: readonly string[] | undefined, old: readonly ParsedLine[]): readonly ParsedLine[] {
  if (
    !texts ||
    sameTexts(
      texts,
      old.map(({ text }) => text),
    )
  )
    return old;
  return texts.map((text, i) => {
    const before = old[i];
    return before?.text === text ? before : parseLine(text);
  });
}

function textsOf({ lines }: Draft): readonly string[] {
  return lines.map(({ text }) => text);
}

/** What lines are read as; undefined where one is not of the same kind any more. */
function readDraft(lines: readonly ParsedLine[], before: Draft, system: System): Draft | undefined {
  if (!lines.every((line, i) => line.kind === before.lines[i]?.kind)) return undefined;
  // Only columns are read: what stands before them may move as it likes.
  const reading = lines.every((line, i) => sameColumns(line, before.lines[i]))
    ? before.reading
    : readSystem(lines, system.header, system);
  return { lines, reading };
}

/** Whether two lines have the same signs and marks in the same columns. */
function sameColumns(line: ParsedLine, old: ParsedLine | undefined): boolean {
  if (line === old) return true;
  if (line.kind === 'string' && old?.kind === 'string')
    return line.width === old.width && samePieces(line.tokens, old.tokens);
  if (line.kind === 'row' && old?.kind === 'row')
    return samePieces(line.marks, old.marks) && samePieces(line.bars, old.bars);
  return false;
}

interface PieceOfLine {
  readonly text: string;
  readonly column: number;
}

function samePieces(one: readonly PieceOfLine[], other: readonly PieceOfLine[]): boolean {
  return (
    one.length === other.length &&
    one.every(({ text, column }, i) => text === other[i]?.text && column === other[i].column)
  );
}

/** Whether everything sounds and stands as in the system, remarks too, and nothing new is wrong. */
function saysTheSame(system: System, before: Draft, { lines, reading }: Draft): boolean {
  if (!lines.every((line, i) => sameWords(line, system.lines[i]))) return false;
  if (reading === before.reading) return true;
  return (
    sameReading(system.reading, reading) &&
    reading.problems.every(({ kind }) => count(reading, kind) <= count(before.reading, kind))
  );
}

function sameWords(line: ParsedLine, old: ParsedLine | undefined): boolean {
  if (line.kind === 'string' && old?.kind === 'string')
    return line.label.text === old.label.text && line.remark?.text === old.remark?.text;
  if (line.kind === 'row' && old?.kind === 'row') return line.word === old.word;
  return line.text === old?.text;
}

function count({ problems }: SystemReading, kind: string): number {
  return problems.filter((problem) => problem.kind === kind).length;
}

function sameTexts(one: readonly string[], other: readonly string[]): boolean {
  return one.every((text, i) => text === other[i]);
}
