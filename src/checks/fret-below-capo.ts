import { findingAt, numberFact, problemsOf, type Check } from './check';
import { rewrite } from './support/edits';

export const fretBelowCapo: Check = {
  code: 'fret-below-capo',
  severity: 'error',
  title: 'Fret below the partial capo',
  help: {
    group: 'Signs',
    meaning:
      'Under a partial capo frets are always counted from the nut. A string that the capo covers cannot be stopped between the nut and the capo; it sounds at the capo for 0 and for the capo’s own fret.',
    mending: 'Write 0 for the string as it rings at the capo, or a fret above the capo.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'fret-below-capo').map((problem) => {
        const limit = numberFact(problem, 'limit');
        const edits = rewrite(scene, problem.line, problem.start, problem.end, '0');
        return findingAt(
          problem,
          `Fret ${numberFact(problem, 'fret')} lies below the capo, which covers string ${numberFact(problem, 'string')} at fret ${limit}; frets count from the nut here. Write 0 for the string at the capo, or a fret above ${limit}.`,
          edits ? [{ title: 'Write 0, the string at the capo', edits }] : [],
        );
      }),
  },
  examples: {
    raises: [
      'capo: 2 on 5 4 3\n\nG|--1---|\n',
      'capo: 4 on 3\n\nG|--3---|\n',
      'capo: 3 on 5-3\n\nA|--0--2|\n',
    ],
    quiet: ['capo: 2 on 5 4 3\n\nG|--2---|\n', 'capo: 2 on 5 4 3\n\nB|--1---|\n', 'capo: 2\n\nG|--1---|\n'],
  },
};
