import { GUITAR, readInstrument } from '../../instrument/instruments';
import { retuningCaution } from '../../instrument/retuningCaution';
import { readTuning } from '../../instrument/tuningValue';
import { createLanguageService } from '../../service/languageService';
import type { TuningAnswer } from '../../service/serviceApi';
import { alignedColumns } from '../alignedColumns';
import type { Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readable } from '../readable';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';

/** Tells what a tuning value means. */
export const tuning: Command = {
  name: 'tuning',
  does: 'tell the strings of a tuning, their frequencies, and the chord they make',
  operands: {
    word: 'VALUE',
    help: 'a tuning as it would stand after “tuning:”, low string first, such as DADGAD or open E -2',
    many: true, // its words need no quotes
  },
  options: [
    {
      name: 'instrument',
      value: 'NAME',
      help: 'the instrument, such as ukulele (guitar when none is given)',
    },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const value = asked.operands.join(' ');
    const name = asked.values.get('instrument');
    const instrument = name === undefined ? GUITAR : readable('--instrument', readInstrument(name));
    readable(undefined, readTuning(value, { instrument, userTunings: settings.tunings }));
    const answer = createLanguageService().tuning(value, name, settings);
    if ('error' in answer) throw new Refusal(answer.error);
    if (asked.flags.has('json')) output.json(answer);
    else output.text(tuningText(answer));
    const caution = retuningCaution(Math.max(0, ...answer.strings.map(({ steps }) => steps ?? 0)));
    if (caution !== undefined) output.report(`${caution}\n`);
    return EXIT.done;
  },
};

function tuningText({ strings, chord, alternatives }: TuningAnswer): string {
  const rows = strings.map(({ number, note, frequency, steps }) => [
    String(number),
    note,
    `${frequency.toFixed(2)} Hz`,
    steps === null ? 'not there' : steps > 0 ? `+${steps}` : String(steps),
  ]);
  const table = alignedColumns([['string', 'note', 'frequency', 'from usual'], ...rows], [0, 2, 3]);
  const also = alternatives.length > 0 ? `, also ${alternatives.join(', ')}` : '';
  return `${table}\nopen strings: ${chord}${also}\n`;
}
