import { findingAt, numbersFact, problemsOf, type Check } from './check';
import { writeSigns } from './support/barSigns';
import { stringLineAt } from './support/edits';

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
        const string = stringLineAt(scene, problem.line);
        const edits = string && writeSigns(string, problem.line, missing);
        const found = findingAt(
          problem,
          `This line has no bar sign where the other strings have one${missing.length > 1 ? `, ${missing.length} times` : ''}. Write it.`,
          edits ? [{ title: 'Write the bar sign', preferred: true, harmless: true, edits }] : [],
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
