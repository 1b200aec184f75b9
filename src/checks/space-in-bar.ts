import { findingAt, problemsOf, type Check, type LineEdit, type Scene } from './check';
import { stringLineAt } from './support/edits';

export const spaceInBar: Check = {
  code: 'space-in-bar',
  severity: 'warning',
  title: 'Space inside a bar',
  help: {
    group: 'Lines',
    meaning:
      'A string line ends at its first space; what follows is a remark. Here it looks as if the bars were to go on, and the notes behind the space are not played.',
    mending: 'Write dashes for the spaces. A remark stands behind the last bar sign.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'space-in-bar').map((problem) =>
        findingAt(
          problem,
          'A space ends the bars of a string line, so what follows is not played. Write dashes for the spaces.',
          [{ title: 'Write dashes for the spaces', preferred: true, edits: fill(scene, problem.line) }],
        ),
      ),
  },
  examples: {
    raises: ['G|--0-- 2--|\n', 'G|--0--2 -3-|--4|\n', 'A|--0-- --|\nE|-------|\n'],
    quiet: ['G|--0--2--| x3\n', 'G|--0--2-- see bar 3 | 4 and slowly\n', 'G|--0--2--| - again\n'],
  },
};

/** Dashes for the spaces up to the last sign that can belong to a bar. */
function fill(scene: Scene, line: number): readonly LineEdit[] {
  const string = stringLineAt(scene, line);
  if (!string) return [];
  const { text, bodyEnd } = string;
  const end = Math.max(text.lastIndexOf('|'), text.lastIndexOf('-')) + 1;
  return [...text.slice(bodyEnd, end).matchAll(/\s/g)].map(({ index }) => {
    const start = bodyEnd + index;
    return { line, start, end: start + 1, text: '-' };
  });
}
