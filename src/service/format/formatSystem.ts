import { sameReading } from '../../notation/sameReading';
import { parseLine } from '../../notation/parseLine';
import type { ParsedLine } from '../../notation/parsedLine';
import type { SystemReading } from '../../notation/reading';
import { readSystem } from '../../notation/systemReading';
import type { System } from '../../notation/tabDocument';
import { endsMadeEqual } from './equalEnds';
import { withPlainSigns } from './plainSigns';
import { withPrefixes } from './prefixes';
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
 * before is taken. The labels come last: they go by what stands before the bars of all lines.
 */
const STEPS: readonly Step[] = [withPlainSigns, signsStraight, endsMadeEqual, rowsAligned, withPrefixes];

/** One round is enough for nearly all; a second and third find nothing to do, or what the first made room for. */
const MOST_ROUNDS = 4;

/**
 * The lines of a system in order, or undefined where they are so already or cannot be made so with every note, onset
 * and mark where it was. The lines of the answer would come back as they are.
 */
export function formatSystem(system: System): readonly string[] | undefined {
  const before = system.lines.map(({ text }) => text);
  let draft: Draft = system;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const start = draft;
    for (const step of STEPS) draft = take(step(draft), draft, system);
    if (draft === start) {
      const after = draft.lines.map(({ text }) => text);
      return sameTexts(after, before) ? undefined : after;
    }
  }
  return undefined;
}

function take(ways: readonly (readonly string[])[], draft: Draft, system: System): Draft {
  const before = draft.lines.map(({ text }) => text);
  for (const texts of ways) {
    if (sameTexts(texts, before)) continue;
    const next = readDraft(texts, draft.lines, system);
    if (next && saysTheSame(system, draft, next)) return next;
  }
  return draft;
}

/** What texts are read as; undefined where a line is not of the same kind any more. */
function readDraft(texts: readonly string[], old: readonly ParsedLine[], system: System): Draft | undefined {
  const lines = texts.map((text, i) => (old[i]?.text === text ? old[i] : parseLine(text)));
  const kept = lines.every((line, i) => line.kind === old[i]?.kind);
  return kept ? { lines, reading: readSystem(lines, system.header, system) } : undefined;
}

/** Whether everything sounds and stands as in the system, remarks too, and nothing new is wrong. */
function saysTheSame(system: System, before: Draft, { lines, reading }: Draft): boolean {
  return (
    sameReading(system.reading, reading) &&
    lines.every((line, i) => sameWords(line, system.lines[i])) &&
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
