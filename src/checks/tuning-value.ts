import { fieldValueCheck } from './support/fieldValue';

export const tuningValue = fieldValueCheck({
  field: 'tuning',
  code: 'tuning-value',
  title: 'Tuning that cannot be read',
  meaning:
    'The value of `tuning` is neither a name that is known for the instrument, nor steps from one, nor notes, low string first. The tuning that held before stays in force, so every note below may be wrong.',
  mending:
    'Write a name (`DADGAD`, `open E`), steps (`standard -2 0 0 0 -2 -2`, `standard down 1`) or notes (`E2 B2 E3 G#3 B3 E4`). One note alone is no tuning; for an instrument of one string write its octave.',
  examples: {
    raises: ['tuning: A\n', 'tuning: standard -2 0 0\n', 'tuning: open Q\n', 'tuning: D A D G A H\n'],
    quiet: [
      'tuning: open A\n',
      'tuning: D-A-D-G-A-D\n',
      'tuning: standard down 1\n',
      'tuning: E2 B2 E3 G#3 B3 E4\n',
    ],
  },
});
