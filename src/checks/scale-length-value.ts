import { fieldValueCheck } from './support/fieldValue';

export const scaleLengthValue = fieldValueCheck({
  field: 'scale length',
  code: 'scale-length-value',
  title: 'Scale length that cannot be read',
  meaning:
    'The scale length is the length of the open strings, with its unit. Without the unit nobody can tell 25.5 inches from 25.5 millimetres.',
  mending: 'Write `648 mm` or `25.5 in`.',
  examples: {
    raises: ['scale length: 648\n', 'scale length: long\n', 'scale length: 25.5 mm\n'],
    quiet: ['scale length: 648 mm\n', 'scale length: 25.5 in\n', 'scale length: 25 1/2 in\n'],
  },
});
