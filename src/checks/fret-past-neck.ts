import { MOST_FRETS } from '../instrument/frets';
import { findingAt, numberFact, problemsOf, textFact, type Check, type SystemMend } from './check';
import { rewrite } from './support/edits';
import { setField } from './support/setField';
import { inWords } from './support/words';

export const fretPastNeck: Check = {
  code: 'fret-past-neck',
  severity: 'error',
  title: 'Fret past the neck',
  help: {
    group: 'Signs',
    meaning:
      'The number is greater than the neck has frets; under a full capo fewer are left, since 0 is at the capo. Two digits that touch are one fret, so 45 may have been meant as 4 and 5.',
    mending: 'Put a dash between two frets. If the neck is longer than is usual, say so with `frets:`.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'fret-past-neck').map((problem) => {
        const fret = numberFact(problem, 'fret');
        const most = numberFact(problem, 'most');
        const frets = numberFact(problem, 'frets');
        const written = textFact(problem, 'split');
        const split = written.includes('-') ? written : [...written].join('-');
        const left = most < frets ? `, ${most} of them above the capo` : '';
        const edits = rewrite(scene, problem.line, problem.start, problem.end, split);
        const longer = frets + fret - most;
        const mends: SystemMend[] = [];
        if (edits && split.includes('-')) mends.push({ title: `Write ${split}`, edits });
        if (longer <= MOST_FRETS) {
          mends.push({
            title: `Say that the neck has ${longer} frets`,
            edits: (document, system) => setField(document, system, 'frets', String(longer)),
          });
        }
        const offer = split.includes('-') ? ` ${inWords(split.split('-'))} with a dash between?` : '';
        return findingAt(
          problem,
          `Fret ${fret} is past the neck, which has ${frets} frets${left}.${offer}`,
          mends,
        );
      }),
  },
  examples: {
    raises: ['G|--45----|\n', 'G|--23----|\n', 'capo: 5\n\nG|--18----|\n', 'instrument: bass\n\nG|--22-|\n'],
    quiet: ['G|--4-5---|\n', 'frets: 24\n\nG|--23----|\n', 'capo: 5\n\nG|--17----|\n'],
  },
};
