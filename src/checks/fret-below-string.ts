import { capoShift } from '../notation/headerViews';
import { findingAt, numberFact, problemsOf, type Check } from './check';
import { rewrite } from './support/edits';

export const fretBelowString: Check = {
  code: 'fret-below-string',
  severity: 'error',
  title: 'Fret where the string has not begun',
  help: {
    group: 'Signs',
    meaning:
      'The fifth string of a banjo begins at its fifth fret. Its open string is 0, and its frets are numbered from the nut like those of the others, so 7 is two frets above open and 1 to 5 are not on it.',
    mending: 'Count from the nut: what is two frets above the open string is 7.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'fret-below-string').map((problem) => {
        const fret = numberFact(problem, 'fret');
        const shift = capoShift(scene.header);
        // Under a full capo all strings count from it, the short one too.
        const limit = numberFact(problem, 'limit') - shift;
        const zero = shift > 0 ? 'capo' : 'nut';
        const string = numberFact(problem, 'string');
        const fromNut = fret + limit;
        const edits =
          fromNut <= numberFact(problem, 'most')
            ? rewrite(scene, problem.line, problem.start, problem.end, String(fromNut))
            : undefined;
        return findingAt(
          problem,
          `String ${string} begins at fret ${limit}, and its frets are counted from the ${zero}: fret ${fret} is not on it. Write ${fromNut} for ${fret} above the open string.`,
          edits ? [{ title: `Write ${fromNut}, counted from the ${zero}`, edits }] : [],
        );
      }),
  },
  examples: {
    raises: [
      'instrument: banjo\n\nG4|--2---|\n',
      'instrument: banjo\n\nD|--0---|\nB|------|\nG|------|\nD|------|\nG|----5-|\n',
      'instrument: banjo\n\n5|1-----|\n',
    ],
    quiet: [
      'instrument: banjo\n\nG4|--7---|\n',
      'instrument: banjo\n\nD|--2---|\nB|--1---|\nG|--2---|\nD|------|\nG|0-----|\n',
      'G|--2---|\n',
    ],
  },
};
