import { textFact } from './check';
import { countCheck } from './support/countCheck';

export const countFit = countCheck({
  code: 'count-fit',
  title: 'Count that does not fit the bars',
  meaning:
    'A bar begins with its 1 at its first column; only the first bar of a part or section may begin late, as a pickup. A syllable over a bar sign, past the last bar, or at a place that the bar sign contradicts holds nothing.',
  mending: 'Move the syllable over the column that it counts, or count the bar from 1.',
  message: (text, problem) => {
    switch (textFact(problem, 'reason')) {
      case 'late':
        return `This bar begins with “${text}”, and only the first bar of a part or section may begin late. Begin it with 1.`;
      case 'notes-before':
        return `“${text}” begins the bar, yet notes of the bar stand before it. Move it to the first note.`;
      default:
        return `“${text}” stands over a bar sign or past the last bar, so it counts nothing. Move it over a column of a bar.`;
    }
  },
  examples: {
    raises: [
      'count |1   2   3   4   |2   3   4       |\nG     |0---2---4---5---|0---2---4-------|\n',
      'count |1   2   3   4   1   |\nG     |0---2---4---5---|\n',
      'count |    1   2   3   |\nG     |0---2---4---5---|\n',
    ],
    quiet: [
      'count |1   2   3   4   |1   2   3   4   |\nG     |0---2---4---5---|0---2---4-------|\n',
      'count |4   |1   2   3   4   |\nG     |0---|0---2---4---5---|\n',
      'count | 1   2   3   4  |\nG     |-0---2---4---5--|\n',
    ],
  },
});
