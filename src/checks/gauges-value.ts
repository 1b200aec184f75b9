import { fieldValueCheck } from './support/fieldValue';

export const gaugesValue = fieldValueCheck({
  field: 'gauges',
  code: 'gauges-value',
  title: 'Gauges that cannot be read',
  meaning:
    'The gauges of the strings stand in the order of the tuning, one for each string, in thousandths of an inch or in millimetres; `w` is wound. This list has something else in it, or too few or too many.',
  mending: 'Write a list such as `46w 36w 26w 17 13 10`.',
  examples: {
    raises: ['gauges: light\n', 'gauges: 46w 36w 26w\n', 'gauges: 46w 36w 26w 17 13 thin\n'],
    quiet: [
      'gauges: 46w 36w 26w 17 13 10\n',
      'gauges: .046w .036w .026w .017 .013 .010\n',
      'gauges: 53w 42w 32w 24w 16 12\n',
    ],
  },
});
