import { fieldValueCheck } from './support/fieldValue';

export const keyValue = fieldValueCheck({
  field: 'key',
  code: 'key-value',
  title: 'Key that cannot be read',
  meaning:
    'A key is a tonic A–G, with a sharp, a flat or neither, and a mode where it is not major. The note below C is B here, not H. The key decides how notes are spelled.',
  mending: 'Write `D`, `E minor`, `Em` or `D mixolydian`.',
  examples: {
    raises: ['key: H minor\n', 'key: D happy\n', 'key: low\n'],
    quiet: ['key: D\n', 'key: Em\n', 'key: D mixolydian\n'],
  },
});
