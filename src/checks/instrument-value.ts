import { fieldValueCheck } from './support/fieldValue';

export const instrumentValue = fieldValueCheck({
  field: 'instrument',
  code: 'instrument-value',
  title: 'Unknown instrument',
  meaning:
    'The instrument decides how many strings there are, their usual tuning, the frets and the length of the neck. This one is not known, so what held before stays in force.',
  mending:
    'Write the name of a known instrument; the nearest are offered. For another one write the nearest of its kind and its own `tuning`, `frets` and `scale length`.',
  examples: {
    raises: ['instrument: guitarr\n', 'instrument: harp of glass\n', 'instrument: ukelele\n'],
    quiet: ['instrument: guitar\n', 'instrument: Twelve String Guitar\n', 'instrument: lap steel\n'],
  },
});
