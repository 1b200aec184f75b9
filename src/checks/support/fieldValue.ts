import type { FieldName } from '../../notation/fieldNames';
import type { FieldGroup, FieldProblem } from '../../notation/tabDocument';
import type { Check, Finding, Mend } from '../check';
import { rangeOf, replace } from './edits';

/** How many values are offered. */
const MOST_MENDS = 5;

/** The problems of a group that are meant, as findings in the reader's own words. */
export function fieldFindings(
  group: FieldGroup,
  isMeant: (problem: FieldProblem) => boolean,
): readonly Finding[] {
  return group.problems.filter(isMeant).map((problem) => {
    const { field, start, end, message, suggestions } = problem;
    const { line, lineIndex } = field;
    const mends = suggestions.slice(0, MOST_MENDS).map((value, i): Mend => ({
      title: `Write ${value}`,
      preferred: i === 0 && suggestions.length === 1,
      edits: [replace(lineIndex, line.valueStart, line.valueStart + line.value.length, value)],
    }));
    return {
      range: rangeOf(lineIndex, start, Math.min(end, Math.max(line.text.length, start + 1))),
      message,
      mends,
    };
  });
}

/** What a check of one field's values needs beside its words. */
export interface FieldValueWords {
  readonly field: FieldName;
  readonly code: string;
  readonly title: string;
  readonly meaning: string;
  readonly mending: string;
  readonly examples: Check['examples'];
}

/** A check that tells where the value of one field cannot be read. */
export function fieldValueCheck(words: FieldValueWords): Check {
  const { field, code, title, meaning, mending, examples } = words;
  return {
    code,
    severity: 'error',
    title,
    help: { group: 'Fields', meaning, mending },
    run: {
      fields: (group) =>
        fieldFindings(
          group,
          (problem) =>
            problem.kind === 'malformed' && problem.reason !== 'empty' && problem.field.line.field === field,
        ),
    },
    examples,
  };
}
