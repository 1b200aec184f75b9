import { findingAt, problemsOf, type Check, type SystemMend } from './check';
import { takeOut } from './support/edits';

export const releaseWithoutBend: Check = {
  code: 'release-without-bend',
  severity: 'error',
  title: 'Release without a bend',
  help: {
    group: 'Signs',
    meaning: '`r` lets a bent note come back: `7b9r7`. No note is bent before it on this string.',
    mending: 'Write the bend before it. For a note that is pulled off write `p`.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'release-without-bend').map((problem) => {
        const { line, start, end } = problem;
        const mends: SystemMend[] = [
          { title: 'Write a dash for the sign', edits: takeOut(scene, line, start, end) },
        ];
        return findingAt(
          problem,
          '“r” releases a bend, and no note is bent before it on this string. Write the bend, such as 7b9r7, or p for a pull-off.',
          mends,
        );
      }),
  },
  examples: {
    raises: ['G|--7r5---|\n', 'G|--r5----|\n', 'G|7b9--5r7|\n'],
    quiet: ['G|--7b9r7-|\n', 'G|7b9--r7-|\n', 'G|--7pb9r7|\n'],
  },
};
