import { findingAt, numberFact, numbersFact, problemsOf, type Check } from './check';
import { harmonicMends } from './support/harmonicMends';
import { inWords } from './support/words';

export const harmonicNode: Check = {
  code: 'harmonic-node',
  severity: 'error',
  title: 'No harmonic there',
  help: {
    group: 'Signs',
    meaning:
      'A harmonic sounds only where the string is touched at a node, a simple part of its length: above frets 12, 7, 5, 4, 9 and their like. Touched anywhere else the string is merely damped. The place counts from where the text counts: the nut or the full capo, for `5<17>` too.',
    mending: 'Write a place that has a node; the nearest are offered.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'no-harmonic-node').map((problem) => {
        const near = numbersFact(problem, 'choices').filter((choice) => choice > 0);
        return findingAt(
          problem,
          `No harmonic sounds when the string is touched at ${numberFact(problem, 'touched')}. The nearest places are ${inWords(near.map(String))}.`,
          harmonicMends(scene, problem),
        );
      }),
  },
  examples: {
    raises: ['G|--<11>----|\n', 'G|--<1>-----|\n', 'G|--5<16>---|\n'],
    quiet: ['G|--<12>----|\n', 'G|--<3.2>---|\n', 'G|--5<17>---|\n'],
  },
};
