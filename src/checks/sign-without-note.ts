import { findingAt, problemsOf, textFact, type Check } from './check';
import { takeOut } from './support/edits';

export const signWithoutNote: Check = {
  code: 'sign-without-note',
  severity: 'error',
  title: 'Sign without its note',
  help: {
    group: 'Signs',
    meaning:
      'Hammer-ons, pull-offs, slides, trills and bends belong to notes on the same string, across dashes and bar lines. This sign has no note on the side where it needs one, so nothing can be played.',
    mending: 'Write the note, or a dash in place of the sign.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'sign-without-note').map((problem) =>
        findingAt(
          problem,
          `“${textFact(problem, 'sign')}” needs a note ${textFact(problem, 'side') === 'after' ? 'after' : 'before'} it on the same string. Write the note, or a dash for the sign.`,
          [
            {
              title: 'Write a dash for the sign',
              edits: takeOut(scene, problem.line, problem.start, problem.end),
            },
          ],
        ),
      ),
  },
  examples: {
    raises: ['G|--5h----|\n', 'G|--b9----|\n', 'G|--5tr---|\n', 'G|--~-5---|\n', 'G|--5-h.-7|\n'],
    quiet: ['G|--5h7---|\n', 'G|--h7----|\n', 'G|--7/----|\n', 'G|--5--h-|-7--|\n'],
  },
};
