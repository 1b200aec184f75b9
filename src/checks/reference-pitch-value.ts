import { fieldValueCheck } from './support/fieldValue';

export const referencePitchValue = fieldValueCheck({
  field: 'reference pitch',
  code: 'reference-pitch-value',
  title: 'Reference pitch that cannot be read',
  meaning: 'The reference pitch is the frequency of the note A4 in hertz, 440 where none is written.',
  mending: 'Write `A4 = 442 Hz`.',
  examples: {
    raises: ['reference pitch: high\n', 'pitch: C4 = 256 Hz\n', 'reference pitch: A4 = 9000 Hz\n'],
    quiet: ['reference pitch: A4 = 442 Hz\n', 'pitch: 432 Hz\n', 'reference pitch: 440\n'],
  },
});
