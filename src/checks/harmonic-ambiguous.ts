import { findingAt, numberFact, numbersFact, problemsOf, type Check } from './check';
import { harmonicMends } from './support/harmonicMends';
import { inWords } from './support/words';

export const harmonicAmbiguous: Check = {
  code: 'harmonic-ambiguous',
  severity: 'error',
  title: 'Two harmonics lie there',
  help: {
    group: 'Signs',
    meaning:
      'Near fret 3 two harmonics lie close together: one a little above it (3.2: two octaves and a fifth), one below (2.7: two octaves and a flat seventh). The whole number does not say which.',
    mending: 'Write the exact place: `<3.2>` or `<2.7>`.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'harmonic-ambiguous').map((problem) =>
        findingAt(
          problem,
          `Two harmonics lie near ${numberFact(problem, 'touched')}. Write ${inWords(
            numbersFact(problem, 'choices').map((choice) => `<${choice}>`),
            'or',
          )}.`,
          harmonicMends(scene, problem),
        ),
      ),
  },
  examples: {
    raises: ['G|--<3>-----|\n', 'G|--2<5>----|\n', 'capo: 2\n\nD|--<3>-----|\n'],
    quiet: ['G|--<3.2>---|\n', 'G|--<2.7>---|\n', 'G|--<5>-----|\n'],
  },
};
