import { readCapo } from '../../instrument/capo';
import { keepOf, runChange } from '../changeCommand';
import type { Command } from '../command';
import { JSON_OPTION, KEEP, LINES, TUNINGS } from '../commonOptions';
import { readable } from '../readable';

/** Moves, puts on or takes off the capo of a passage. */
export const moveCapo: Command = {
  name: 'move-capo',
  does: 'move the capo of a passage, put one on or take it off',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    { name: 'to', value: 'VALUE', help: 'where the capo goes, such as 3, none or "2 on 5 4 3"' },
    KEEP,
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  required: ['to'],
  async run(asked, output) {
    const keep = keepOf(asked);
    const capo = asked.values.get('to') ?? '';
    return runChange(asked, output, ({ service, document, settings, range, header }) => {
      readable('--to', readCapo(capo, header.tuning.strings.length, header.frets));
      return service.moveCapo(document, { range, capo, keep }, settings);
    });
  },
};
