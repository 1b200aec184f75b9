import type { Check } from './check';
import { rangeOf, replace } from './support/edits';

export const fieldMisspelled: Check = {
  code: 'field-misspelled',
  severity: 'warning',
  title: 'A field nearly written',
  help: {
    group: 'Lines',
    meaning:
      'The word before the colon is a letter or two off the name of a field that could take this value. The line is text for the reader as it stands and changes nothing.',
    mending: 'Write the field’s name. A line that is meant as text may be written without the colon.',
  },
  run: {
    nearMiss: (document, at) => {
      const line = document.line(at);
      if (line.kind !== 'prose' || line.nearMiss?.kind !== 'field') return [];
      const { field, start, end } = line.nearMiss;
      const rest = /^\s*:/.exec(line.text.slice(end))?.[0].length ?? 0;
      const gap = /^\s/.test(line.text.slice(end + rest)) ? '' : ' ';
      return [
        {
          range: rangeOf(at, start, end),
          message: `“${line.text.slice(start, end)}” is no field, so this line is only text. Is ${field} meant?`,
          mends: [
            {
              title: `Write ${field}`,
              preferred: true,
              edits: [replace(at, start, end + rest, `${field}:${gap}`)],
            },
          ],
        },
      ];
    },
  },
  examples: {
    raises: ['tunning: DADGAD\n', 'title: Gate\ncappo: 2\n', 'tempoo: 96\n', 'metre: 6/8\n'],
    quiet: ['tuning: DADGAD\n', 'So: play it again\n', 'Band: The Gate\n', 'tunning: by ear\n'],
  },
};
