import { fieldValueCheck } from './support/fieldValue';

export const frettingValue = fieldValueCheck({
  field: 'fretting',
  code: 'fretting-value',
  title: 'Fretting that is not known',
  meaning:
    'Strings are stopped by fingers, or by one straight bar laid across them. With `slide` chords are checked for what a bar can play.',
  mending: 'Write `fingers` or `slide`.',
  examples: {
    raises: ['fretting: bottle\n', 'fretting: hand\n', 'fretting: slides\n'],
    quiet: ['fretting: slide\n', 'fretting: fingers\n', 'fretting: Slide\n'],
  },
});
