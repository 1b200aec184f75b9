import { createLanguageService } from '../../service/languageService';
import type { Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Prints a tab with the names of its notes in place of frets. */
export const names: Command = {
  name: 'names',
  does: 'print a tab with the names of its notes in place of frets, still lined up',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [{ name: 'octaves', help: 'write each name with its octave, such as F#4' }, JSON_OPTION, TUNINGS],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const { text } = await readTextFile(asked.operands[0]);
    const service = createLanguageService();
    const answer = service.noteNames(service.open(text, settings), { octaves: asked.flags.has('octaves') });
    if (asked.flags.has('json')) output.json(answer);
    else output.text(answer.text.endsWith('\n') ? answer.text : `${answer.text}\n`);
    return EXIT.done;
  },
};
