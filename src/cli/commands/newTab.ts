import { createLanguageService } from '../../service/languageService';
import { LAYOUT_ROWS, type LayoutRow } from '../../service/start/startAnswer';
import type { Command } from '../command';
import { TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { numberOf } from '../optionValues';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';

/** Prints a tab to begin with. */
export const newTab: Command = {
  name: 'new',
  does: 'print a tab to begin with: its fields and an empty system',
  operands: {
    word: 'TUNING',
    help: 'the tuning, by name or notes, such as DADGAD; left out, the usual one',
    many: false,
    optional: true,
  },
  options: [
    {
      name: 'instrument',
      value: 'NAME',
      help: 'the instrument, such as ukulele (guitar when none is given)',
    },
    { name: 'meter', value: 'M', help: 'the meter, such as 3/4 (4/4 when none is given)' },
    { name: 'bars', value: 'N', help: 'how many bars, 1 to 16 (4 when none is given)' },
    { name: 'columns', value: 'N', help: 'columns a beat (room for sixteenths when none is given)' },
    { name: 'rows', value: 'LIST', help: `rows over the strings, of ${LAYOUT_ROWS.join(', ')}` },
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const given = (name: string): Record<string, string> => {
      const value = asked.values.get(name);
      return value === undefined ? {} : { [name]: value };
    };
    const [tuning] = asked.operands;
    const bars = numberOf(asked, 'bars', { whole: true, least: 1, most: 16 });
    const columns = numberOf(asked, 'columns', { whole: true, least: 1, most: 24 });
    const answer = createLanguageService().newTab(
      {
        ...(tuning.trim() !== '' && { tuning }),
        ...given('instrument'),
        ...given('meter'),
        ...(bars !== undefined && { bars }),
        ...(columns !== undefined && { columns }),
        rows: rowsOf(asked.values.get('rows')),
      },
      settings,
    );
    if ('error' in answer) throw new Refusal(answer.error);
    output.text(answer.text);
    return EXIT.done;
  },
};

function rowsOf(text: string | undefined): readonly LayoutRow[] {
  const words = (text ?? '').split(/[\s,]+/).filter((word) => word !== '');
  return words.map((word) => {
    const row = LAYOUT_ROWS.find((one) => one === word.toLowerCase());
    if (row === undefined)
      throw new Refusal(`--rows takes a list of ${LAYOUT_ROWS.join(', ')}; “${word}” is none.`);
    return row;
  });
}
