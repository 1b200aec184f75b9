import { usualLabel } from '../notation/labels';
import { findingAt, numberFact, problemsOf, textFact, type Check, type SystemMend } from './check';
import { labelsOfTuning, tuningFromLabels, stringLines, hasOctave } from './support/labelled';
import { relabel } from './support/relabel';
import { setField } from './support/setField';

export const labelDisagrees: Check = {
  code: 'label-disagrees',
  severity: 'warning',
  title: 'Label against the tuning',
  help: {
    group: 'Labels and strings',
    meaning:
      'Lines are counted from the bottom, and the `tuning` says what each of them is; a label only checks it. This label names another note. Either the label or the tuning is not what was meant. What sounds goes by the tuning.',
    mending:
      'Relabel the line, or all lines, as the tuning has them; or change the tuning to what the labels say.',
  },
  run: {
    system: (scene) => {
      const problems = problemsOf(scene, 'label-disagrees');
      if (problems.length === 0) return [];
      const tuning = tuningFromLabels(scene);
      const octaves = stringLines(scene).some(({ item }) => hasOctave(item.label));
      return problems.map((problem) => {
        const note = usualLabel(scene.header.tuning, numberFact(problem, 'index'), octaves);
        const mends: SystemMend[] = [
          { title: `Label this line ${note}`, edits: relabel(scene, new Map([[problem.line, note]])) },
        ];
        if (problems.length > 1) {
          mends.push({
            title: 'Label all lines by the tuning',
            edits: relabel(scene, labelsOfTuning(scene)),
          });
        }
        if (tuning !== undefined) {
          mends.push({
            title: `Change the tuning to ${tuning}`,
            edits: (document, system) => setField(document, system, 'tuning', tuning),
          });
        }
        return findingAt(
          problem,
          `This line is string ${numberFact(problem, 'number')}, which the tuning has at ${note}, and its label says ${textFact(problem, 'label')}. Relabel it, or change the tuning.`,
          mends,
        );
      });
    },
  },
  examples: {
    raises: [
      'tuning: DADGAD\n\nD|0---|\nA|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'E|0---|\nC|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'instrument: bass\ntuning: drop D\n\nG2|0---|\nC2|----|\nA1|----|\nD1|----|\n',
    ],
    quiet: [
      'tuning: DADGAD\n\nD|0---|\nA|----|\nG|----|\nD|----|\nA|----|\nD|----|\n',
      'e|0---|\nb|----|\n3|----|\nD|----|\nA|----|\nE2|----|\n',
      'instrument: 12-string guitar\n\nE|0---|\nB|----|\nG3/G4|----|\nD4|----|\nA|----|\nE3|----|\n',
    ],
  },
};
