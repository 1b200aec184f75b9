import { createLanguageService } from '../../service/languageService';
import type { Command } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readLineRange } from '../lineRange';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { SHAPE_WISHES, shapeWishesOf } from '../shapeWishes';
import { readTextFile } from '../textFile';

/** Tells every chord of a song with its shape. */
export const chart: Command = {
  name: 'chart',
  does: 'tell every chord that a song names, with its shape in the tuning',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    { name: 'svg', help: 'answer as one sheet of pictures, an SVG file' },
    ...SHAPE_WISHES,
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const { flags, values } = asked;
    if (flags.has('json') && flags.has('svg'))
      throw new Refusal('--json and --svg are two ways to answer; give one of them.');
    const wishes = shapeWishesOf(asked);
    const settings = await settingsOf(asked);
    const { text } = await readTextFile(asked.operands[0]);
    const service = createLanguageService();
    const document = service.open(text, settings);
    const lines = values.get('lines');
    const range = lines === undefined ? undefined : readLineRange(lines, document);
    const answer = service.chordChart(document, { range, ...wishes }, settings);
    if ('error' in answer) throw new Refusal(answer.error, EXIT.refused);
    if (flags.has('json')) output.json(answer);
    else output.text(flags.has('svg') ? `${answer.svg}\n` : answer.text);
    output.report(answer.remarks.map((line) => `${line}\n`).join(''));
    return EXIT.done;
  },
};
