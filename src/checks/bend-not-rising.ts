import { findingAt, numberFact, problemsOf, textFact, type Check } from './check';
import { rewrite } from './support/edits';

export const bendNotRising: Check = {
  code: 'bend-not-rising',
  severity: 'warning',
  title: 'Bend that does not rise',
  help: {
    group: 'Signs',
    meaning:
      'A bend raises the pitch. The number behind `b` is the fret whose pitch it reaches, so it is greater than the fret that is stopped. `b` alone is a whole step.',
    mending:
      'Write the fret that the bend reaches, a part of a step (`b1/2`), or `b` alone. Coming back is `r`.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'bend-not-rising').map((problem) => {
        const { line } = problem;
        const [from, to] = [numberFact(problem, 'from'), numberFact(problem, 'to')];
        const sign = textFact(problem, 'sign');
        const edits = rewrite(
          scene,
          line,
          numberFact(problem, 'signStart'),
          numberFact(problem, 'signEnd'),
          sign,
        );
        return findingAt(
          problem,
          `A bend raises the pitch, and this one goes from fret ${from} to ${to === from ? 'the same fret' : to}. Write the fret whose pitch it reaches, or ${sign} alone for a whole step.`,
          edits ? [{ title: `Write ${sign}, a whole step up`, edits }] : [],
        );
      }),
  },
  examples: {
    raises: ['G|--7b5---|\n', 'G|--7b7---|\n', 'G|--7pb6--|\n'],
    quiet: ['G|--7b9---|\n', 'G|--7b-5--|\n', 'G|--7b1/2-|\n', 'G|--7b9r7-|\n'],
  },
};
