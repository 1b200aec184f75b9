import type { Check } from './check';
import { rangeOf, replace } from './support/edits';

export const systemsTogether: Check = {
  code: 'systems-together',
  severity: 'information',
  title: 'Two systems without a blank line',
  help: {
    group: 'Labels and strings',
    meaning:
      'There are twice as many string lines as strings, and the labels begin again: they are read as two systems, one after the other.',
    mending: 'Put a blank line between them, so that a reader sees the same.',
  },
  run: {
    neighbours: (_document, before, system) => {
      const at = system.firstLine;
      if (before.firstLine + before.lines.length !== at) return [];
      return [
        {
          range: rangeOf(at, 0, system.lines[0]?.text.length ?? 0),
          message:
            'The labels begin again here, so a second system is read without a blank line before it. Put one between them.',
          mends: [{ title: 'Put a blank line here', preferred: true, edits: [replace(at, 0, 0, '\n')] }],
        },
      ];
    },
  },
  examples: {
    raises: [
      'E|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\nE|2---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'instrument: ukulele\n\nA|0---|\nE|----|\nC|----|\nG|----|\nA|2---|\nE|----|\nC|----|\nG|----|\n',
      'instrument: bass\n\nG|0---|\nD|----|\nA|----|\nE|----|\nchords |G   |\nG|2---|\nD|----|\nA|----|\nE|----|\n',
    ],
    quiet: [
      'instrument: ukulele\n\nA|0---|\nE|----|\nC|----|\nG|----|\n\nA|2---|\nE|----|\nC|----|\nG|----|\n',
      'instrument: bass\n\nG|0---|\nD|----|\nA|----|\nE|----|\n',
      'instrument: bass\n\nG|0---|\nD|----|\nA|----|\nE|----|\nAnd again:\nG|2---|\nD|----|\nA|----|\nE|----|\n',
    ],
  },
};
