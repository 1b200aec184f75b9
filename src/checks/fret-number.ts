import { findingAt, problemsOf, textFact, type Check } from './check';
import { rewrite } from './support/edits';
import { inWords } from './support/words';

export const fretNumber: Check = {
  code: 'fret-number',
  severity: 'error',
  title: 'No fret number',
  help: {
    group: 'Signs',
    meaning:
      'A run of digits is one fret. No fret begins with 0 or has three digits, so these digits are several frets written without dashes between them, and nothing can sound.',
    mending: 'Put a dash between the frets, or write the one that is meant.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'fret-number').map((problem) => {
        const text = textFact(problem, 'text');
        const split = textFact(problem, 'split');
        const why = text.startsWith('0') ? 'begins with 0' : 'has too many digits';
        const edits = rewrite(scene, problem.line, problem.start, problem.end, split);
        return findingAt(
          problem,
          `“${text}” ${why} for one fret. ${inWords(split.split('-'))} with a dash between?`,
          edits ? [{ title: `Write ${split}`, edits }] : [],
        );
      }),
  },
  examples: {
    raises: ['G|--00----|\n', 'G|--123---|\n', 'G|07|\n', 'A|--02--3-|\n'],
    quiet: ['G|--0-0---|\n', 'G|--12-3--|\n', 'G|--0h2---|\n'],
  },
};
