import { findingAt, problemsOf, type Check, type LineEdit, type Scene } from './check';
import { stringLines } from './support/labelled';

export const upsideDown: Check = {
  code: 'upside-down',
  severity: 'warning',
  title: 'Strings upside down',
  help: {
    group: 'Labels and strings',
    meaning:
      'Tab is written with string 1, the one nearest the floor, at the top. The labels of this system fit from the bottom up instead. Lines are counted by their order, so every note is on another string than its label says.',
    mending: 'Turn the system over; rows stay where they are.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'upside-down').map((problem) =>
        findingAt(
          problem,
          'The labels fit the tuning upside down: string 1 belongs at the top. Turn the system over.',
          [{ title: 'Turn the system over', preferred: true, edits: turnOver(scene) }],
        ),
      ),
  },
  examples: {
    raises: [
      'E2|0---|\nA2|----|\nD3|----|\nG3|----|\nB3|----|\nE4|----|\n',
      'instrument: bass\n\nE|0---|\nA|----|\nD|----|\nG|----|\n',
      'tuning: open G\n\nchords |G   |\nD|0---|\nG|----|\nD|----|\nG|----|\nB|----|\nD|----|\n',
    ],
    quiet: [
      'E4|0---|\nB3|----|\nG3|----|\nD3|----|\nA2|----|\nE2|----|\n',
      'instrument: bass\n\nG|0---|\nD|----|\nA|----|\nE|----|\n',
      'instrument: ukulele\n\nA|0---|\nE|----|\nC|----|\nG|----|\n',
    ],
  },
};

function turnOver(scene: Scene): readonly LineEdit[] {
  const lines = stringLines(scene);
  return lines.flatMap(({ line, item }, i) => {
    const other = lines[lines.length - 1 - i]?.item;
    return other && other !== item ? [{ line, start: 0, end: item.text.length, text: other.text }] : [];
  });
}
