import { numbersFact, type LineEdit } from '../../checks/check';
import { straightenLine, writeSigns } from '../../checks/support/barSigns';
import type { ParsedLine } from '../../notation/parsedLine';
import type { Draft } from './formatSystem';

/**
 * Bar signs under each other. A sign that is out of line moves by dashes before it, so that the notes of the line stay
 * in their bars as they were written; where that would give one another time the line stays, and its diagnostic with
 * it: setting it in order in silence would hide the mistake.
 */
export function signsStraight({ lines, reading }: Draft): readonly (readonly string[])[] {
  const mended = reading.problems.flatMap((problem): { line: number; text: string }[] => {
    const line = lines[problem.line];
    if (line?.kind !== 'string') return [];
    const edits =
      problem.kind === 'bar-out-of-line'
        ? straightenLine(line, problem)
        : problem.kind === 'bar-missing'
          ? writeSigns(line, problem.line, numbersFact(problem, 'missing'))
          : undefined;
    // A sign is never taken away: more of them may be meant than most lines have.
    const taken = edits?.some(({ start, end, text }) => text.startsWith('-') && end > start);
    return edits && !taken ? [{ line: problem.line, text: edited(line, edits) }] : [];
  });
  if (mended.length === 0) return [];
  const withLines = (chosen: typeof mended): string[] =>
    lines.map(({ text }, i) => chosen.find(({ line }) => line === i)?.text ?? text);
  // All at once; else one line, and the others when the steps come round again.
  return [withLines(mended), ...(mended.length > 1 ? mended.map((one) => withLines([one])) : [])];
}

/** A line's text after edits of it. */
export function edited({ text }: ParsedLine, edits: readonly LineEdit[]): string {
  return [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce((result, { start, end, text: put }) => result.slice(0, start) + put + result.slice(end), text);
}
