import { placesThatFit } from '../notation/labels';
import { findingAt, problemsOf, type Check, type SystemMend } from './check';
import { plainLabels, stringLines } from './support/labelled';
import { relabel } from './support/relabel';
import { inWords } from './support/words';

/** How many ways to read the labels are offered. */
const MOST_WAYS = 3;

export const stringsLeftOut: Check = {
  code: 'strings-left-out',
  severity: 'warning',
  title: 'Which strings?',
  help: {
    group: 'Labels and strings',
    meaning:
      'A system may leave strings out when its labels, in order, name strings of the tuning in one way only. These labels fit more than one way, or none, so the lines are only guessed to be the strings they are read as.',
    mending: 'Write labels with octaves (`E2`, `E4`) or string numbers (`6`, `1`), or write all strings.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'strings-left-out').map((problem) => {
        const { tuning } = scene.header;
        const lines = stringLines(scene);
        const count = tuning.strings.length;
        const fits = placesThatFit(
          lines.map(({ item }) => item.label),
          tuning,
          MOST_WAYS,
        );
        const numbers = fits.map((fit) => inWords(fit.map((index) => String(count - index))));
        const read = scene.reading.strings.map(({ index }) => index);
        const mends = (fits.length > 0 ? fits : [read]).map((fit): SystemMend => {
          const labels = plainLabels(tuning, fit);
          const name = fit.map((index) => String(count - index));
          return {
            title: `Label ${lines.length === 1 ? 'it as string' : 'them as strings'} ${inWords(name)}`,
            edits: relabel(scene, new Map(lines.map(({ line }, i) => [line, labels[i] ?? '']))),
          };
        });
        return findingAt(
          problem,
          `${whichStrings(lines.length, count, numbers)} Write octaves or string numbers as labels.`,
          mends,
        );
      }),
  },
  examples: {
    raises: ['E|--0--2--|\n', 'tuning: DADGAD\n\nD|--0--|\nA|--2--|\n', 'A|--0--|\nB|--2--|\n', 'C|--0--|\n'],
    quiet: ['E2|--0--2--|\n', 'A|--0--|\nE|--2--|\n', 'tuning: DADGAD\n\nG|--0--|\n', '6|--0--|\n'],
  },
};

/** What is unclear, in one sentence; `ways` are the string numbers that the labels fit. */
function whichStrings(lines: number, count: number, ways: readonly string[]): string {
  if (lines === 1) {
    const why = ways.length > 0 ? `it may be string ${inWords(ways, 'or')}` : 'its label names none of them';
    return `Only one of ${count} strings stands here, and ${why}.`;
  }
  const why =
    ways.length > 0
      ? `they may be strings ${inWords(ways, 'or')}`
      : 'their labels do not name strings of the tuning in order';
  return `Only ${lines} of ${count} strings stand here, and ${why}.`;
}
