import { findingAt, problemsOf, textFact, type Check } from './check';
import { rewrite, takeOut } from './support/edits';

export const unknownSign: Check = {
  code: 'unknown-sign',
  severity: 'error',
  title: 'Unknown sign',
  help: {
    group: 'Signs',
    meaning:
      'A character in a bar is no sign of the notation, so nobody can say what is played there. It is passed over. Signs of other habits (`H`, `^`, `s`) have a sign here too.',
    mending:
      'Write the sign that is meant, or a dash. Words belong behind the last bar line, or in a row of their own.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'unknown-sign').map((problem) => {
        const meant = textFact(problem, 'meant');
        const advice = meant
          ? `Write ${meant} if that is meant.`
          : 'Write a dash, or put words behind the last bar line.';
        const better = meant && rewrite(scene, problem.line, problem.start, problem.end, meant);
        return findingAt(problem, `“${textFact(problem, 'text')}” is no sign of the notation. ${advice}`, [
          ...(better && meant !== '-' ? [{ title: `Write ${meant}`, preferred: true, edits: better }] : []),
          { title: 'Write a dash', edits: takeOut(scene, problem.line, problem.start, problem.end) },
        ]);
      }),
  },
  examples: {
    raises: ['G|--5q--|\n', 'G|--5H7-|\n', 'G|--O-2-|\n', 'G|--5=-7|\n'],
    quiet: ['G|--5h7-|\n', 'G|--5--| slowly, quietly\n', 'ring |q    |\nG    |--5--|\n'],
  },
};
