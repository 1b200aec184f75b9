import type { Check } from './check';
import { fieldFindings } from './support/fieldValue';

export const flatOrB: Check = {
  code: 'flat-or-b',
  severity: 'information',
  title: 'A small b that may be a flat or a note',
  help: {
    group: 'Fields',
    meaning:
      'In notes written without spaces a small `b` behind a letter may be a flat or the note B. The reading that gives as many notes as there are strings is taken; say which you mean to be sure.',
    mending: 'Write the notes apart, or the note B as a capital.',
  },
  run: {
    fields: (group) =>
      fieldFindings(group, ({ kind, reason }) => kind === 'notice' && reason === 'flat-or-b'),
  },
  examples: {
    raises: ['tuning: ebbdgbe\n', 'tuning: dgbbgd\n', 'tuning: eabdgbe\n'],
    quiet: ['tuning: eadgbe\n', 'tuning: DADGBD\n', 'tuning: d a d g b d\n'],
  },
};
