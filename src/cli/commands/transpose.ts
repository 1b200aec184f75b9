import { readKey } from '../../music/key';
import { runChange } from '../changeCommand';
import type { Command } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { Refusal } from '../refusal';

/** Moves a passage by half steps, or to a key. */
export const transpose: Command = {
  name: 'transpose',
  does: 'move a passage by half steps, or to a key',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    { name: 'by', value: 'N', help: 'half steps, such as 2 or -3, or the key to go to, such as "E minor"' },
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  required: ['by'],
  async run(asked, output) {
    const by = readBy(asked.values.get('by') ?? '');
    return runChange(asked, output, ({ service, document, settings, range }) =>
      service.transpose(document, { range, by }, settings),
    );
  },
};

/** Half steps as a number; a key as it was written. */
function readBy(value: string): number | string {
  const written = value.trim().replace(/^−/, '-');
  if (/^[+-]?\d+$/.test(written)) return Number(written);
  if (readKey(written).ok) return written;
  throw new Refusal(
    `--by takes a whole number of half steps, such as 2 or -3, or a key, such as E minor; “${value}” is neither.`,
  );
}
