import { numberFact, textFact } from './check';
import { countCheck } from './support/countCheck';

export const countRange = countCheck({
  code: 'count-range',
  title: 'Count past the meter',
  meaning:
    'Numbers of a count are the lower note of the meter, or dotted beats in 6/8, 9/8 and 12/8 when no number exceeds a third of the upper number. This number is greater than the meter has, so it holds nothing.',
  mending: 'Count anew in each bar, or write the meter that is meant.',
  message: (text, problem) =>
    `${textFact(problem, 'meter')} counts from 1 to ${numberFact(problem, 'highest')}, and ${text} stands here, so it holds nothing. Count anew in each bar, or change the meter.`,
  examples: {
    raises: [
      'meter: 3/4\n\ncount |1   2   3   4   |\nG     |0---2---4---5---|\n',
      'count |1   2   3   4   5   |\nG     |0---2---4---5---7---|\n',
      'count |1   2   0   4   |\nG     |0---2---4---5---|\n',
    ],
    quiet: [
      'count |1   2   3   4   |\nG     |0---2---4---5---|\n',
      'meter: 5/4\n\ncount |1   2   3   4   5   |\nG     |0---2---4---5---7---|\n',
      'meter: 6/8\n\ncount |1 2 3 4 5 6 |\nG     |0-2-4-5-4-2-|\n',
    ],
  },
});
