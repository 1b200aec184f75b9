import type { Check } from './check';
import { rangeOf } from './support/edits';
import { looseRowAt } from './support/looseRows';

export const looseRow: Check = {
  code: 'loose-row',
  severity: 'hint',
  title: 'A count or chords without their word',
  help: {
    group: 'Rows',
    meaning:
      'A count or names of chords stand right above the strings, as in many tabs, and without the word that makes them a row. So they are text for the reader: the count holds no note to its time, and the chords do not move with the music.',
    mending:
      'Put the row’s word and a bar line before them: `count |`, `chords |`; the mend does so, and every mark stays over its column. Or leave a blank line below them where they are only text.',
  },
  run: {
    nearMiss: (document, at) => {
      const loose = looseRowAt(document, at);
      if (!loose) return [];
      const { text } = document.line(at);
      const start = text.length - text.trimStart().length;
      const what = loose.row === 'count' ? 'a count' : 'chords';
      return [
        {
          range: rangeOf(at, start, text.trimEnd().length),
          message: `This reads like ${what} above the strings and is only text as it stands. Write ${loose.row} | before it.`,
          mends: [
            {
              title: loose.row === 'count' ? 'Make it a count row' : 'Make it a row of chords',
              preferred: true,
              edits: loose.edits,
            },
          ],
        },
      ];
    },
  },
  examples: {
    raises: [
      '   1   2   3   4\nG |0---2---4---5---|\n',
      'G       D7\nG|0-------|2-------|\nD|--------|--------|\nA|--------|--------|\n',
      '[Verse]\n  1 & 2 & 3 & 4 &\nG|0-2-4-5-7-5-4-2-|\n',
      '  Am      N.C.\n  1 & 2 & 3 & 4 &\nG|0-2-4-5-7-5-4-2-|\n',
    ],
    quiet: [
      'count |1 & 2 & 3 & 4 & |\nG     |0-2-4-5-7-5-4-2-|\n',
      'G       D7\n\nG|0-------|2-------|\n',
      'A low tide\nG|0-------|2-------|\n',
      'Am      D7\nLow the tide\n',
      '2024\nG|0-------|2-------|\n',
    ],
  },
};
