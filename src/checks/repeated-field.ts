import type { Check } from './check';
import { fieldFindings } from './support/fieldValue';

export const repeatedField: Check = {
  code: 'repeated-field',
  severity: 'warning',
  title: 'A field written twice',
  help: {
    group: 'Fields',
    meaning:
      'Fields with no system between them are read together, and this one is written twice among them. The last holds; the earlier one says nothing.',
    mending:
      'Take out the one that is not meant. To change a field on the way, write it below the system it still holds for.',
  },
  run: {
    fields: (group) =>
      fieldFindings(group, ({ kind }) => kind === 'repeated').map((finding) => {
        const { line } = finding.range.start;
        const range = { start: { line, character: 0 }, end: { line: line + 1, character: 0 } };
        return {
          ...finding,
          message: `${finding.message} Take this one out.`,
          mends: [{ title: 'Take this line out', preferred: false, edits: [{ range, newText: '' }] }],
        };
      }),
  },
  examples: {
    raises: [
      'tuning: DADGAD\ntuning: open G\n',
      'capo: 2\ntitle: Gate\ncapo: 3\n',
      'key: D\nkey: D\n\nG|0---|\n',
    ],
    quiet: [
      'by: Ann of the Quay\nby: her brother\n',
      'tuning: DADGAD\n\nG|0---|\n\ntuning: open G\n\nB|0---|\n',
      'remark: low tide\nremark: or high\n',
    ],
  },
};
