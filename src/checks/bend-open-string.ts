import { findingAt, numberFact, problemsOf, type Check } from './check';
import { takeOut } from './support/edits';

export const bendOpenString: Check = {
  code: 'bend-open-string',
  severity: 'warning',
  title: 'Bend on an open string',
  help: {
    group: 'Signs',
    meaning: 'A bend pushes a stopped string aside. An open string has no finger on it that could.',
    mending: 'Bend a stopped note of the same pitch on another string, or leave the bend out.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'bend-open-string').map((problem) =>
        findingAt(
          problem,
          'An open string cannot be bent: no finger stops it. Bend the same note on another string, or leave the bend out.',
          [
            {
              title: 'Leave the bend out',
              edits: takeOut(
                scene,
                problem.line,
                numberFact(problem, 'signStart'),
                numberFact(problem, 'signEnd'),
              ),
            },
          ],
        ),
      ),
  },
  examples: {
    raises: ['G|--0b2---|\n', 'G|--0b----|\n', 'capo: 2 on 5 4 3\n\nG|--2b4---|\n'],
    quiet: ['G|--2b4---|\n', 'G|--0h2---|\n', 'G|--<12>b--|\n'],
  },
};
