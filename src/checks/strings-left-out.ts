import { placesThatFit } from '../notation/labels';
import { parseLine } from '../notation/parseLine';
import { readSystem } from '../notation/systemReading';
import { findingAt, problemsOf, type Check, type LineEdit, type Scene, type SystemMend } from './check';
import { withAllStrings } from './support/missingStrings';
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
    mending:
      'Write labels with octaves (`E2`, `E4`) or string numbers (`6`, `1`), or write all strings; a mend does either.',
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
        const mends = (fits.length > 0 ? fits : [read]).flatMap((fit): SystemMend[] => {
          const labels = plainLabels(tuning, fit);
          const name = inWords(fit.map((index) => String(count - index)));
          const edits = relabel(scene, new Map(lines.map(({ line }, i) => [line, labels[i] ?? ''])));
          const one = lines.length === 1;
          const all = writeAll(scene, edits);
          return [
            { title: `Label ${one ? 'it as string' : 'them as strings'} ${name}`, edits },
            ...(all
              ? [
                  {
                    title: `Write all ${count} strings, with ${one ? 'it as' : 'them as'} ${name}`,
                    edits: all,
                  },
                ]
              : []),
          ];
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

/** All strings of the tuning, after labels that say which ones the lines are. */
function writeAll({ system }: Scene, labels: readonly LineEdit[]): readonly LineEdit[] | undefined {
  const texts = system.lines.map(({ text }, line) =>
    labels
      .filter((edit) => edit.line === line)
      .reduce((result, { start, end, text: put }) => result.slice(0, start) + put + result.slice(end), text),
  );
  const lines = texts.map(parseLine);
  const written = withAllStrings(lines, readSystem(lines, system.header, system), system.header, system);
  return written?.flatMap((parts, line): LineEdit[] => {
    const old = system.lines[line]?.text ?? '';
    const text = parts.join('\n');
    return text === old ? [] : [{ line, start: 0, end: old.length, text }];
  });
}

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
