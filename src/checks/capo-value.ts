import { fieldValueCheck } from './support/fieldValue';

export const capoValue = fieldValueCheck({
  field: 'capo',
  code: 'capo-value',
  title: 'Capo that cannot be read',
  meaning:
    'A capo is the fret it stands at, and for a partial one the numbers of the strings that it covers. This value says neither, or names a fret or string that is not there. The capo that held before stays in force.',
  mending: 'Write `3`, `none`, or for a partial capo `2 on 5 4 3`.',
  examples: {
    raises: ['capo: high\n', 'capo: 30\n', 'capo: 2 on 9\n', 'capo: III\n'],
    quiet: ['capo: 3\n', 'capo: 3rd fret\n', 'capo: 2 on 5 4 3\n', 'capo: none\n'],
  },
});
