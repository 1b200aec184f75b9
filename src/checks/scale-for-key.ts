import type { Check } from './check';
import { rangeOf, replace } from './support/edits';

export const scaleForKey: Check = {
  code: 'scale-for-key',
  severity: 'hint',
  title: 'A scale where a key is meant',
  help: {
    group: 'Lines',
    meaning:
      'There is no field `scale`. What a piece is in is its `key`, with a mode where it is not major: `key: D mixolydian`. The length of the strings is `scale length`.',
    mending: 'Write `key`.',
  },
  run: {
    nearMiss: (document, at) => {
      const line = document.line(at);
      if (line.kind !== 'prose' || line.nearMiss?.kind !== 'scale') return [];
      const { start, end } = line.nearMiss;
      return [
        {
          range: rangeOf(at, start, end),
          message: 'There is no field scale, so this line is only text. Write key for what the piece is in.',
          mends: [{ title: 'Write key', preferred: true, edits: [replace(at, start, end, 'key')] }],
        },
      ];
    },
  },
  examples: {
    raises: ['scale: D major\n', 'Scale: E minor\n\nG|0---|\n', 'scale: D mixolydian\n'],
    quiet: ['key: D major\n', 'scale length: 648 mm\n', 'scale: by ear and slowly\n'],
  },
};
