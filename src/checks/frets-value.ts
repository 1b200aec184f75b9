import { fieldValueCheck } from './support/fieldValue';

export const fretsValue = fieldValueCheck({
  field: 'frets',
  code: 'frets-value',
  title: 'Number of frets that cannot be read',
  meaning: 'The field says how many frets the neck has, a whole number from 1 to 36.',
  mending: 'Write the number alone, such as `22`.',
  examples: {
    raises: ['frets: many\n', 'frets: 99\n', 'frets: 0\n'],
    quiet: ['frets: 22\n', 'frets: 24 frets\n', 'frets: 12\n'],
  },
});
