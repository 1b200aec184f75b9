import { textFact } from './check';
import { countCheck } from './support/countCheck';

export const countOrder = countCheck({
  code: 'count-order',
  title: 'Count out of order',
  meaning:
    'In a bar the syllables of a count come later and later. This one names a time that is no later than the one before it, so it holds nothing.',
  mending: 'Write the syllable that is meant, or take it out: not every beat need be written.',
  message: (text, problem) => {
    const after = textFact(problem, 'after');
    return after === ''
      ? `“${text}” stands before the 1 that it belongs to, so it holds nothing. Count from 1 on.`
      : `“${text}” comes behind “${after}” and names no later time, so it holds nothing. Count upwards in each bar.`;
  },
  examples: {
    raises: [
      'count |1   3   2   4   |\nG     |0---2---4---5---|\n',
      'count |1   2   2   3   |\nG     |0---2---4---5---|\n',
      'count |1 & & 2 3 4     |\nG     |0---2---4---5---|\n',
    ],
    quiet: [
      'count |1   2   3   4   |\nG     |0---2---4---5---|\n',
      'count |1   2   3   4   |1   2   3   4   |\nG     |0---2---4---5---|0---------------|\n',
      'count |1       3       |\nG     |0---2---4---5---|\n',
    ],
  },
});
