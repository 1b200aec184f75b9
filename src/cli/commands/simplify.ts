import { runChange } from '../changeCommand';
import type { Command } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { numberOf } from '../optionValues';
import { Refusal } from '../refusal';

/** Brings a passage within limits for a student. */
export const simplify: Command = {
  name: 'simplify',
  does: 'bring a passage within limits: tune and bass stay, inner notes go',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    {
      name: 'span',
      value: 'MM',
      help: 'the widest span of the fingers, millimetres along the neck, such as 90',
    },
    { name: 'speed', value: 'N', help: 'the most notes a second, such as 3' },
    { name: 'fingers', value: 'N', help: 'the most fingers at once, 1 to 4' },
    { name: 'highest-fret', value: 'N', help: 'the highest fret, such as 5' },
    { name: 'no-barres', help: 'no finger stops more than one string' },
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const span = numberOf(asked, 'span', { least: 1, most: 400 });
    const speed = numberOf(asked, 'speed', { least: 0.1, most: 100 });
    const fingers = numberOf(asked, 'fingers', { whole: true, least: 1, most: 4 });
    const highestFret = numberOf(asked, 'highest-fret', { whole: true, least: 0, most: 36 });
    const barres = asked.flags.has('no-barres') ? { barres: false } : {};
    const limits = {
      ...(span !== undefined && { span }),
      ...(speed !== undefined && { speed }),
      ...(fingers !== undefined && { fingers }),
      ...(highestFret !== undefined && { highestFret }),
      ...barres,
    };
    if (Object.keys(limits).length === 0)
      throw new Refusal(
        'Give at least one limit: --span MM, --speed N, --fingers N, --highest-fret N or --no-barres.',
      );
    return runChange(asked, output, ({ service, document, settings, range }) =>
      service.simplify(document, { range, ...limits }, settings),
    );
  },
};
