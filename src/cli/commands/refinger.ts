import type { RefingerRequest } from '../../service/serviceApi';
import { runChange } from '../changeCommand';
import type { Asked, Command } from '../command';
import { ALTERNATIVES, JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { numberOf, wordOf } from '../optionValues';
import { Refusal } from '../refusal';

const OBJECTIVES = ['lower', 'open', 'strings', 'hardest', 'closed'] as const;

/** Fingers a passage anew in the tuning that it stands in. */
export const refinger: Command = {
  name: 'refinger',
  does: 'finger a passage anew in its own tuning',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    {
      name: 'objective',
      value: 'O',
      help: 'lower, open (more open strings), strings (those of --strings), hardest (an easier hardest step) or closed',
    },
    {
      name: 'strings',
      value: 'N…',
      help: 'the strings to play on, for --objective strings, such as "3 2 1"',
    },
    ALTERNATIVES,
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  required: ['objective'],
  async run(asked, output) {
    const request = requestOf(asked);
    return runChange(asked, output, ({ service, document, settings, range }) =>
      service.refinger(document, { range, ...request }, settings),
    );
  },
};

function requestOf(asked: Asked): Omit<RefingerRequest, 'range'> {
  const objective = wordOf(asked, 'objective', OBJECTIVES) ?? 'lower';
  const strings = asked.values.get('strings');
  if ((strings !== undefined) !== (objective === 'strings'))
    throw new Refusal('--objective strings and --strings N… go together, such as --strings "3 2 1".');
  const numbers = strings?.split(/[\s,]+/).filter((text) => text !== '');
  if (numbers?.some((text) => !/^\d+$/.test(text)))
    throw new Refusal(`--strings takes string numbers, such as "3 2 1"; “${strings ?? ''}” is none.`);
  const alternatives = numberOf(asked, 'alternatives', { whole: true, least: 1, most: 3 });
  return {
    objective,
    ...(numbers && { strings: numbers.map(Number) }),
    ...(alternatives !== undefined && { alternatives }),
  };
}
