import { readTuning } from '../../instrument/tuningValue';
import { keepOf, runChange } from '../changeCommand';
import type { Command } from '../command';
import { JSON_OPTION, KEEP, LINES, TUNINGS } from '../commonOptions';
import { readable } from '../readable';

/** Carries a passage to another tuning. */
export const convert: Command = {
  name: 'convert',
  does: 'carry a passage to another tuning',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    {
      name: 'tuning',
      value: 'T',
      help: 'the tuning to go to, by name or note by note from the low string, such as DADGAD',
    },
    KEEP,
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  required: ['tuning'],
  async run(asked, output) {
    const keep = keepOf(asked);
    const tuning = asked.values.get('tuning') ?? '';
    return runChange(asked, output, ({ service, document, settings, range, header: { instrument } }) => {
      readable('--tuning', readTuning(tuning, { instrument, userTunings: settings.tunings }));
      return service.convert(document, { range, tuning, keep }, settings);
    });
  },
};
