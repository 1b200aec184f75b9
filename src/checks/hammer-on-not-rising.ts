import { findingAt, numberFact, problemsOf, type Check } from './check';

export const hammerOnNotRising: Check = {
  code: 'hammer-on-not-rising',
  severity: 'warning',
  title: 'Hammer-on that does not rise',
  help: {
    group: 'Signs',
    meaning: 'A hammer-on brings a finger down above the note that sounds, so the pitch can only rise.',
    mending: 'Going down is a pull-off, `7p5`. The same fret again is struck: put a dash for the sign.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'hammer-not-rising').map((problem) => {
        const [from, to] = [numberFact(problem, 'from'), numberFact(problem, 'to')];
        const falls = to < from;
        return findingAt(
          problem,
          `A hammer-on rises, and this one goes from fret ${from} to ${falls ? to : 'the same fret'}. ${falls ? 'Write p for a pull-off.' : 'Write a dash for a note that is struck again.'}`,
          [
            {
              title: falls ? 'Write p, a pull-off' : 'Write a dash for the sign',
              preferred: falls,
              edits: [
                {
                  line: problem.line,
                  start: numberFact(problem, 'signStart'),
                  end: numberFact(problem, 'signEnd'),
                  text: falls ? 'p' : '-',
                },
              ],
            },
          ],
        );
      }),
  },
  examples: {
    raises: ['G|--7h5---|\n', 'G|--5h5---|\n', 'G|--2--h0-|\n'],
    quiet: ['G|--5h7---|\n', 'G|--7p5---|\n', 'G|--7--h9-|\n'],
  },
};
