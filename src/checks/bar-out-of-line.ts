import { findingAt, numberFact, problemsOf, type Check } from './check';
import { straightenLine } from './support/barSigns';
import { stringLineAt } from './support/edits';

export const barOutOfLine: Check = {
  code: 'bar-out-of-line',
  severity: 'warning',
  title: 'Bar sign out of line',
  help: {
    group: 'Bars',
    meaning:
      'Bar signs of all strings stand in one column. This line has one where most others have none, often because a dash is missing or too many, so its notes may be read in another bar or at another time.',
    mending:
      'Move the sign by adding dashes or taking some away; the mend does so where no note is in the way.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'bar-out-of-line').map((problem) => {
        const off = numberFact(problem, 'expected') - numberFact(problem, 'column');
        const string = stringLineAt(scene, problem.line);
        const edits = string && straightenLine(string, problem);
        const where = Math.abs(off) === 1 ? 'one column' : `${Math.abs(off)} columns`;
        return findingAt(
          problem,
          off === 0
            ? 'This bar sign does not stand in line with those of the other strings.'
            : `This bar sign stands ${where} ${off > 0 ? 'before' : 'behind'} those of the other strings. ${off > 0 ? 'Add' : 'Take away'} ${Math.abs(off) === 1 ? 'a dash' : 'dashes'} before it.`,
          edits ? [{ title: 'Move the bar sign into line', preferred: true, edits }] : [],
        );
      }),
  },
  examples: {
    raises: [
      'E|0---|\nB|1---|\nG|0--|\nD|2---|\nA|3---|\nE|----|\n',
      'G|0---|2---|\nD|----|----|\nA|-----|----|\n',
      'G|0---|2---|\nD|----|----|\nA|-|---|----|\n',
    ],
    quiet: [
      'E|0---|\nB|1---|\nG|0---|\nD|2---|\nA|3---|\nE|----|\n',
      'G|:0---:|\nD|------|\nA|------|\n',
      'G|0---|2---\nD|----|----\nA|----|----\n',
    ],
  },
};
