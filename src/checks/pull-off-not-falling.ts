import { findingAt, numberFact, problemsOf, type Check } from './check';

export const pullOffNotFalling: Check = {
  code: 'pull-off-not-falling',
  severity: 'warning',
  title: 'Pull-off that does not fall',
  help: {
    group: 'Signs',
    meaning:
      'A pull-off plucks the string as a finger leaves it, so that a lower note sounds: the pitch can only fall.',
    mending: 'Going up is a hammer-on, `5h7`. The same fret again is struck: put a dash for the sign.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'pull-not-falling').map((problem) => {
        const [from, to] = [numberFact(problem, 'from'), numberFact(problem, 'to')];
        const rises = to > from;
        return findingAt(
          problem,
          `A pull-off falls, and this one goes from fret ${from} to ${rises ? to : 'the same fret'}. ${rises ? 'Write h for a hammer-on.' : 'Write a dash for a note that is struck again.'}`,
          [
            {
              title: rises ? 'Write h, a hammer-on' : 'Write a dash for the sign',
              preferred: rises,
              edits: [
                {
                  line: problem.line,
                  start: numberFact(problem, 'signStart'),
                  end: numberFact(problem, 'signEnd'),
                  text: rises ? 'h' : '-',
                },
              ],
            },
          ],
        );
      }),
  },
  examples: {
    raises: ['G|--5p7---|\n', 'G|--5p5---|\n', 'G|--0--p2-|\n'],
    quiet: ['G|--7p5---|\n', 'G|--5h7---|\n', 'G|--2p0---|\n'],
  },
};
