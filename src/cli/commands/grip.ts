import { createLanguageService } from '../../service/languageService';
import type { GripAnswer } from '../../service/grip/gripAnswer';
import { alignedColumns } from '../alignedColumns';
import type { Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readPlace } from '../place';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Tells how the hand holds one column. */
export const grip: Command = {
  name: 'grip',
  does: 'tell the fingers of least effort for what is struck and held at one place',
  operands: {
    word: 'FILE LINE:COLUMN',
    help: 'a tab file, or - for standard input, and a place in it, counted from 1, such as 12:7',
    many: true,
  },
  options: [
    { name: 'reach', value: 'MM', help: 'the widest stretch of your hand, in millimetres; 130 without it' },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const [name, place, ...more] = asked.operands;
    if (place === undefined || more.length > 0)
      throw new Refusal('grip takes a file and one place in it, such as song.pegbox 12:7.');
    const at = readPlace(place);
    const { text } = await readTextFile(name);
    const service = createLanguageService();
    const document = service.open(text, settings);
    if (at.line >= document.lineCount)
      throw new Refusal(`${name} has ${document.lineCount} lines, so there is no line ${at.line + 1}.`);
    const answer = service.grip(document, at, settings);
    if (!answer)
      throw new Refusal(
        `No string is stopped or open at ${place}; name a column of a system, such as that of a fret.`,
      );
    if (asked.flags.has('json')) output.json(answer);
    else output.text(gripText(answer));
    return EXIT.done;
  },
};

const HEADINGS = ['string', 'fret', 'finger', ''];

/** The words, then a line for each string, string 1 first, as the tab has them. */
function gripText(answer: GripAnswer): string {
  const rows = [...answer.strings]
    .reverse()
    .map(({ string, state, fret, finger, struck }) => [
      String(string),
      state === 'silent' || state === 'muted' ? 'x' : String(fret ?? ''),
      finger === null || finger === 0 ? '' : String(finger),
      state === 'silent' ? '' : state === 'stopped' ? (struck ? '' : 'held') : state,
    ]);
  const effort = answer.basis === '' ? '' : `${answer.basis}.\n`;
  return `${answer.words}\n${effort}\n${alignedColumns([HEADINGS, ...rows], [0, 1, 2])}\n`;
}
