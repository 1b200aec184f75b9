import { markCheck } from './support/rowMarks';

export const endingMark = markCheck({
  code: 'ending-mark',
  title: 'No number of an ending',
  row: 'ending',
  meaning:
    'An `ending` row has the numbers of the times for which the bars below are played, over the first of those bars: `1.`, `2.`, `1.-3.`, `1,2`. A line drawn behind a number may follow.',
  mending: 'Write the number of the time.',
  fits: /^(?:\d{1,2}\.?(?:[,\-–]\d{1,2}\.?)*[,\-–_]*|[-–_]+)$/,
  expected: 'numbers such as 1. or 1,2',
  examples: {
    raises: [
      'ending |        |first   |\nG      |0-------|2-------|\n',
      'ending |        |I.      |\nG      |0-------|2-------|\n',
      'ending |        |1st     |\nG      |0-------|2-------|\n',
    ],
    quiet: [
      'ending |        |1.      |2.      |\nG      |0-------|2------:|4-------|\n',
      'ending |        |1.-3.   |4       |\nG      |0-------|2------:|4-------|\n',
      'ending |        |1.----- |2.----- |\nG      |0-------|2------:|4-------|\n',
    ],
  },
});
