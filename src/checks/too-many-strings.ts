import { findingAt, numberFact, problemsOf, type Check, type SystemMend } from './check';
import { stringLines, tuningFromLabels } from './support/labelled';
import { setField } from './support/setField';

export const tooManyStrings: Check = {
  code: 'too-many-strings',
  severity: 'error',
  title: 'More lines than strings',
  help: {
    group: 'Labels and strings',
    meaning:
      'The system has more string lines than the tuning has strings. Lines are counted from the bottom, so those at the top are on no string and do not sound.',
    mending:
      'Declare the instrument or the tuning that has so many strings, or put a blank line where a second system begins.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'too-many-strings').map((problem) => {
        const tuning = tuningFromLabels(scene);
        const lines = stringLines(scene);
        const mends: SystemMend[] = [];
        if (tuning !== undefined) {
          mends.push({
            title: `Change the tuning to ${tuning}`,
            edits: (document, system) => setField(document, system, 'tuning', tuning),
          });
        }
        const top = lines[0]?.item.label.text.toLowerCase();
        const again = lines.slice(1).find(({ item }) => item.label.text.toLowerCase() === top);
        if (again && lines.indexOf(again) * 2 === lines.length) {
          mends.push({
            title: `Put a blank line above line ${again.item.label.text} where the labels begin again`,
            edits: [{ line: again.line, start: 0, end: 0, text: '\n' }],
          });
        }
        return findingAt(
          problem,
          `There are ${numberFact(problem, 'lines')} string lines here and ${numberFact(problem, 'strings')} strings in the tuning. Declare the tuning of this instrument, or put a blank line between two systems.`,
          mends,
        );
      }),
  },
  examples: {
    raises: [
      'E|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\nB|----|\n',
      'instrument: bass\n\nG|0---|\nD|----|\nA|----|\nE|----|\nB|----|\n',
      'instrument: ukulele\n\nE|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
    ],
    quiet: [
      'tuning: B E A D G B E\n\nE|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\nB|----|\n',
      'instrument: five-string bass\n\nG|0---|\nD|----|\nA|----|\nE|----|\nB|----|\n',
      'E|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
    ],
  },
};
