import { findingAt, problemsOf, type Check } from './check';
import { labelsOfTuning, notesOf } from './support/labelled';
import { relabel } from './support/relabel';

export const usualLabels: Check = {
  code: 'usual-labels',
  severity: 'hint',
  title: 'Labels of the usual tuning',
  help: {
    group: 'Labels and strings',
    meaning:
      'The lines carry the labels of the usual tuning though another one is in force, as many tabs do. The strings go by the tuning and the order of the lines; the labels only look wrong.',
    mending: 'Relabel the lines, so that a reader sees what the strings are.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'usual-labels').map((problem) =>
        findingAt(
          problem,
          `The labels are those of the usual tuning, and the strings are ${notesOf(scene.header.tuning)} here, low string first. Relabel the lines.`,
          [
            {
              title: 'Label all lines by the tuning',
              preferred: true,
              harmless: true,
              edits: relabel(scene, labelsOfTuning(scene)),
            },
          ],
        ),
      ),
  },
  examples: {
    raises: [
      'tuning: half step down\n\nE|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'tuning: DADGAD\n\ne|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'instrument: bass\ntuning: drop D\n\ncount |1 2 3 4 |\nG|0-------|\nD|--------|\nA|--------|\nE|--------|\n',
    ],
    quiet: [
      'E|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'tuning: half step down\n\nEb|0---|\nBb|----|\nGb|----|\nDb|----|\nAb|----|\nEb|----|\n',
      'tuning: half step down\n\n1|0---|\n2|----|\n3|----|\n4|----|\n5|----|\n6|----|\n',
    ],
  },
};
