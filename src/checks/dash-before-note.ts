import { findingAt, problemsOf, textFact, type Check } from './check';
import { rewrite } from './support/edits';

export const dashBeforeNote: Check = {
  code: 'dash-before-note',
  severity: 'warning',
  title: 'A dot between two numbers',
  help: {
    group: 'Signs',
    meaning:
      'A dot stops the string, so `12.5` is fret 12, a stop, and fret 5 in the very next column. It looks like a decimal, and whoever reads it may take it for one.',
    mending:
      'Put a dash behind the dot: `12.-5`. A bend to a pitch between two frets is written with its sign: `12b12.5`.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'dash-before-note').map((problem) => {
        const fret = textFact(problem, 'text');
        const edits = rewrite(scene, problem.line, problem.start, problem.end + fret.length, `.-${fret}`);
        return findingAt(
          problem,
          `The dot stops the string and ${fret} follows at once, which reads like a decimal. Put a dash behind the dot.`,
          edits ? [{ title: 'Put a dash behind the dot', preferred: true, edits }] : [],
        );
      }),
  },
  examples: {
    raises: ['G|--12.5--|\n', 'G|5.7-----|\n', 'G|--3.3|\nD|--0--|\n'],
    quiet: ['G|--12.-5-|\n', 'G|--5.-7--|\n', 'G|--12b12.5--|\n', 'G|--<3.2>--|\n'],
  },
};
