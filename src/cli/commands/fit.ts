import { runChange } from '../changeCommand';
import type { Command } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { numberOf } from '../optionValues';

/** Breaks systems anew, so that lines are no longer than a width. */
export const fit: Command = {
  name: 'fit',
  does: 'break systems anew, so that lines fit a width',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    { name: 'width', value: 'N', help: 'the most columns of a line, 20 or more; 80 when left out' },
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const width = numberOf(asked, 'width', { whole: true, least: 20, most: 10_000 }) ?? 80;
    return runChange(asked, output, ({ service, document, settings, range }) => {
      const last = document.lineCount - 1;
      const whole = {
        start: { line: 0, character: 0 },
        end: { line: last, character: document.line(last).text.length },
      };
      return service.columns(document, { action: 'fitWidth', range: range ?? whole, width }, settings);
    });
  },
};
