import type { Problem } from '../../notation/reading';
import { findingAt, problemsOf, textFact, type Check } from '../check';
import { blankOut } from './edits';

/** What a check of count rows needs beside its words. */
export interface CountWords extends Pick<Check, 'code' | 'title' | 'examples'> {
  readonly meaning: string;
  readonly mending: string;
  readonly message: (text: string, problem: Problem) => string;
}

/** A check of one way in which a syllable of a count row can fail to fit; its code is the problem's kind. */
export function countCheck({ code, title, meaning, mending, message, examples }: CountWords): Check {
  return {
    code,
    severity: 'warning',
    title,
    help: { group: 'Rows', meaning, mending },
    run: {
      system: (scene) =>
        problemsOf(scene, code).map((problem) => {
          const text = textFact(problem, 'text');
          return findingAt(problem, message(text, problem), [
            { title: `Take “${text}” out`, edits: blankOut(scene, problem.line, problem.start, problem.end) },
          ]);
        }),
    },
    examples,
  };
}
