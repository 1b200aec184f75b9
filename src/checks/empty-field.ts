import type { Check } from './check';
import { fieldFindings } from './support/fieldValue';

export const emptyField: Check = {
  code: 'empty-field',
  severity: 'warning',
  title: 'A field without a value',
  help: {
    group: 'Fields',
    meaning:
      'A field’s name and its colon stand here, and no value. What held before stays in force; a `part` without a name is a part all the same.',
    mending: 'Write the value, or take the line out.',
  },
  run: {
    fields: (group) =>
      fieldFindings(group, ({ reason, kind }) => kind === 'malformed' && reason === 'empty').map(
        (finding) => {
          const { line } = finding.range.start;
          const range = { start: { line, character: 0 }, end: { line: line + 1, character: 0 } };
          return {
            ...finding,
            message: `${finding.message.replace(/\.$/, '')} behind its colon. Write it, or take the line out.`,
            mends: [{ title: 'Take the line out', preferred: false, edits: [{ range, newText: '' }] }],
          };
        },
      ),
  },
  examples: {
    raises: ['capo:\n', 'part:\n\nG|0---|\n', 'title: Gate\ntuning:\n'],
    quiet: ['capo: none\n', 'part: low guitar\n\nG|0---|\n', 'So it goes:\n'],
  },
};
