import type { Problem } from '../notation/reading';
import { findingAt, numbersFact, problemsOf, type Check, type LineEdit, type Scene } from './check';
import { offsetAt, stringLineAt } from './support/edits';

export const barSignMissing: Check = {
  code: 'bar-sign-missing',
  severity: 'warning',
  title: 'Bar sign missing',
  help: {
    group: 'Bars',
    meaning: 'Most strings have a bar sign in a column where this line goes on without one.',
    mending: 'Write the bar sign. Where this line is right, take the sign from the others.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'bar-missing').map((problem) => {
        const missing = numbersFact(problem, 'missing');
        const edits = write(scene, problem, missing);
        const found = findingAt(
          problem,
          `This line has no bar sign where the other strings have one${missing.length > 1 ? `, ${missing.length} times` : ''}. Write it.`,
          edits ? [{ title: 'Write the bar sign', preferred: true, edits }] : [],
        );
        const [at] = edits ?? [];
        return at ? { ...found, start: at.start, end: at.end } : found;
      }),
  },
  examples: {
    raises: [
      'G|0---|2---|\nD|----|----|\nA|---------|\n',
      'E|0---|\nB|1---|\nG|0---|\nD|2---|\nA|3---|\nE|-----\n',
      'G|0---|2---|4---|\nD|----|----|----|\nA|---------|----|\n',
    ],
    quiet: [
      'G|0---|2---|\nD|----|----|\nA|----|----|\n',
      'G|0---|2---|\nD|----|----|\nA|----|\n',
      'G|:0---|2---:|\nD|-----|-----|\n',
    ],
  },
};

/** Bar signs over the dashes that stand in their columns; undefined where something else stands there. */
function write(scene: Scene, problem: Problem, missing: readonly number[]): readonly LineEdit[] | undefined {
  const { line } = problem;
  const string = stringLineAt(scene, line);
  const edits: LineEdit[] = [];
  for (const column of missing) {
    const start = string && offsetAt(string, column);
    if (start === undefined || string?.text[start] !== '-') return undefined;
    edits.push({ line, start, end: start + 1, text: '|' });
  }
  return edits;
}
