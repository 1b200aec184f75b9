import { numberFact, textFact } from './check';
import { countCheck } from './support/countCheck';

export const countSyllable = countCheck({
  code: 'count-syllable',
  title: 'No syllable of a count',
  meaning:
    'A count is made of numbers, `&` or `+` half-way, `e` and `a` the quarters about it, `t` (`trip`) and `l` (`let`) the thirds. In dotted beats `&` and `a` are the second and third parts and there is no `e`. Anything else holds nothing.',
  mending: 'Write the syllable that is meant; words belong in another row.',
  message: (text, problem) =>
    numberFact(problem, 'dotted') === 1
      ? `“${text}” has no place in the dotted beats of ${textFact(problem, 'meter')}: a beat is counted 1 & a. Write numbers, & and a.`
      : `“${text}” is no syllable of a count. Write numbers, & or +, e and a, or t and l for thirds.`,
  examples: {
    raises: [
      'count |1   x   3   4   |\nG     |0---2---4---5---|\n',
      'count |1   and 3   4   |\nG     |0---2---4---5---|\n',
      'meter: 6/8\n\ncount |1 e a 2 & a |\nG     |0-2-4-5-4-2-|\n',
    ],
    quiet: [
      'count |1 e & a 2   3   |\nG     |0-0-2-0-4---5---|\n',
      'count |1  trip let 2   |\nG     |0---2---4---5---|\n',
      'meter: 6/8\n\ncount |1 & a 2 & a |\nG     |0-2-4-5-4-2-|\n',
    ],
  },
});
