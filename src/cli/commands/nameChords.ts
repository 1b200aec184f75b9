import { runChange } from '../changeCommand';
import type { Command } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';

/** Writes the names of what sounds into rows of chords. */
export const nameChords: Command = {
  name: 'name-chords',
  does: 'write a chords row over every system from what sounds; names that are there stay',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    { name: 'replace', help: 'replace names that disagree with what sounds' },
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const replace = asked.flags.has('replace');
    return runChange(asked, output, ({ service, document, range }) =>
      service.writeChords(document, { range, replace }),
    );
  },
};
