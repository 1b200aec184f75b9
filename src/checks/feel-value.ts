import { fieldValueCheck } from './support/fieldValue';

export const feelValue = fieldValueCheck({
  field: 'feel',
  code: 'feel-value',
  title: 'Feel that is not known',
  meaning:
    'The feel is how eighths are played: as they stand, or long and short. Times in the text stay as they are.',
  mending: 'Write `straight`, `swing` or `swing sixteenths`.',
  examples: {
    raises: ['feel: lazy\n', 'feel: swung\n', 'feel: shuffle along\n'],
    quiet: ['feel: straight\n', 'feel: swing\n', 'feel: Swing Sixteenths\n'],
  },
});
