import { fieldValueCheck } from './support/fieldValue';

export const meterValue = fieldValueCheck({
  field: 'meter',
  code: 'meter-value',
  title: 'Meter that cannot be read',
  meaning:
    'A meter is a number of beats over the note that counts them, such as `4/4` or `6/8`. Without it nobody knows how long a bar is.',
  mending: 'Write two numbers with a slash between them.',
  examples: {
    raises: ['meter: waltz\n', 'meter: 4/5\n', 'time: 4\n'],
    quiet: ['meter: 3/4\n', 'time: 6/8\n', 'meter: 12/8\n'],
  },
});
