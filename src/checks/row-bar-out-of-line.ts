import { findingAt, numbersFact, problemsOf, type Check } from './check';
import { straightenRow } from './support/barSigns';
import { rowLineAt } from './support/edits';

export const rowBarOutOfLine: Check = {
  code: 'row-bar-out-of-line',
  severity: 'warning',
  title: 'Bar line of a row out of line',
  help: {
    group: 'Bars',
    meaning:
      'What stands in a row belongs to the columns of the string lines below. A bar line of this row stands over no bar sign of theirs, so the marks about it may have slipped too.',
    mending:
      'Move the bar line and look at the marks beside it. Bar lines after a row’s first may be left out.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'row-bar-out-of-line').map((problem) => {
        const row = rowLineAt(scene, problem.line);
        const edits = row && straightenRow(row, problem.line, numbersFact(problem, 'expected'));
        return findingAt(
          problem,
          'This bar line stands over no bar sign of the strings. Move it into line, and the marks beside it where they slipped too.',
          edits ? [{ title: 'Move the bar line into line', edits }] : [],
        );
      }),
  },
  examples: {
    raises: [
      'count |1   2  |3   4   |\nG     |0---0---|0---0---|\n',
      'chords |G      |D       |\nG      |0-------|2-------|\n',
      'words |low     tide | ebbs |\nG     |0-------|2-------|\n',
    ],
    quiet: [
      'chords |G       |D       |\nG      |0-------|2-------|\n',
      'chords |G        D\nG      |0-------|2-------|\n',
      'chords | G      |D       |\nG      |:0-----:|2-------|\n',
    ],
  },
};
