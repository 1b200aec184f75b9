import { fieldValueCheck } from './support/fieldValue';

export const tempoValue = fieldValueCheck({
  field: 'tempo',
  code: 'tempo-value',
  title: 'Tempo that cannot be read',
  meaning: 'A tempo is the number of quarter notes a minute, or of another note that is named.',
  mending: 'Write `96`, `96 bpm` or `dotted quarter = 60`.',
  examples: {
    raises: ['tempo: slowly\n', 'tempo: 0\n', 'tempo: half = many\n'],
    quiet: ['tempo: 96\n', 'tempo: 96 bpm\n', 'tempo: dotted quarter = 60\n'],
  },
});
