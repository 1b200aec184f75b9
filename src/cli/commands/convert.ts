import { readTuning } from '../../instrument/tuningValue';
import { readInstrument } from '../../instrument/instruments';
import { readCapo } from '../../instrument/capo';
import { readKey } from '../../music/key';
import type { ConvertRequest } from '../../service/serviceApi';
import { runChange } from '../changeCommand';
import type { Asked, Command, Option } from '../command';
import { ALTERNATIVES, JSON_OPTION, LINES, OBJECTIVE, TUNINGS } from '../commonOptions';
import { numberOf, wordOf } from '../optionValues';
import { readable } from '../readable';
import { Refusal } from '../refusal';

const TUNING: Option = {
  name: 'tuning',
  value: 'T',
  help: 'the tuning to go to, by name or note by note from the low string, such as DADGAD',
};

/** Any of these says where to go; one must be given. */
const GOALS = ['tuning', 'instrument', 'key', 'by', 'capo', 'objective'] as const;

/** Carries a passage to another tuning. */
export const convert: Command = {
  name: 'convert',
  does: 'carry a passage to another tuning, instrument or key',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    TUNING,
    {
      name: 'instrument',
      value: 'I',
      help: 'another instrument, with its usual tuning unless --tuning is given',
    },
    {
      name: 'keep',
      value: 'sound|shapes|function',
      help: 'keep the sound (the default), the shapes, or the function: the degrees, under another key',
    },
    { name: 'key', value: 'K', help: 'the key to go to, for --keep function, such as G or "E minor"' },
    OBJECTIVE,
    ALTERNATIVES,
    { name: 'closed', help: 'no open strings' },
    { name: 'by', value: 'N', help: 'move everything by half steps as well, such as 2 or -3' },
    { name: 'capo', value: 'VALUE', help: 'put the capo elsewhere as well, such as 3 or none' },
    { name: 'octaves', help: 'take notes that have no place to another octave' },
    { name: 'leave-out', value: 'doubled', help: 'leave out nothing but doubled inner notes' },
    { name: 'new-part', value: 'NAME', help: 'keep the original, and write the result under it as a part' },
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const request = requestOf(asked);
    return runChange(asked, output, ({ service, document, settings, range, header }) => {
      const { instrument: name, tuning, capo, key } = request;
      const instrument =
        name === undefined ? header.instrument : readable('--instrument', readInstrument(name));
      const strings =
        tuning === undefined
          ? header.tuning
          : readable('--tuning', readTuning(tuning, { instrument, userTunings: settings.tunings }));
      if (capo !== undefined)
        readable(
          '--capo',
          readCapo(capo, strings.strings.length, name === undefined ? header.frets : instrument.frets),
        );
      if (key !== undefined) readable('--key', readKey(key));
      return service.convert(document, { range, ...request }, settings);
    });
  },
};

function requestOf(asked: Asked): Omit<ConvertRequest, 'range'> {
  const { values, flags } = asked;
  const keep = wordOf(asked, 'keep', ['sound', 'shapes', 'function'] as const);
  if (keep === 'function' && !values.has('key'))
    throw new Refusal('--keep function needs --key K, the key to go to, such as G or "E minor".');
  if (values.has('key') && keep !== 'function')
    throw new Refusal('--key K goes with --keep function; without it the key stays what it is.');
  if (!GOALS.some((name) => values.has(name)) && !flags.has('closed'))
    throw new Refusal(`--tuning T is missing: ${TUNING.help}.`);
  const by = numberOf(asked, 'by', { whole: true, least: -36, most: 36 });
  const alternatives = numberOf(asked, 'alternatives', { whole: true, least: 1, most: 3 });
  const objective = wordOf(asked, 'objective', ['total', 'hardest'] as const);
  const leaveOut = wordOf(asked, 'leave-out', ['doubled'] as const);
  const text = (name: string, as = name): Record<string, string> => {
    const value = values.get(name);
    return value === undefined ? {} : { [as]: value };
  };
  return {
    ...text('tuning'),
    ...text('instrument'),
    ...text('key'),
    ...text('capo'),
    ...text('new-part', 'newPart'),
    ...(keep && { keep }),
    ...(objective && { objective }),
    ...(leaveOut && { leaveOut }),
    ...(by !== undefined && { by }),
    ...(alternatives !== undefined && { alternatives }),
    ...(flags.has('closed') && { closed: true }),
    ...(flags.has('octaves') && { octaves: true }),
  };
}
