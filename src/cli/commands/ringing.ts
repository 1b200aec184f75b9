import { createLanguageService } from '../../service/languageService';
import type { RingingAnswer, RingingOver, RingingString } from '../../service/ringing/ringingAnswer';
import { alignedColumns } from '../alignedColumns';
import type { Command } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readLineRange } from '../lineRange';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Tells which open strings may ring over the key and each chord of a piece. */
export const ringing: Command = {
  name: 'ringing',
  does: 'tell which open strings may ring over the key and each chord: free, in passing, mute',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [LINES, JSON_OPTION, TUNINGS],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const { text } = await readTextFile(asked.operands[0]);
    const service = createLanguageService();
    const document = service.open(text, settings);
    const lines = asked.values.get('lines');
    const where = lines === undefined ? {} : { range: readLineRange(lines, document) };
    const answer = service.ringing(document, where, settings);
    if (asked.flags.has('json')) output.json(answer);
    else output.text(ringingText(answer));
    output.report(answer.remarks.map((remark) => `${remark}\n`).join(''));
    return EXIT.done;
  },
};

/** A line for each key and chord, under the tuning that they are played in. */
function ringingText({ keys, chords }: RingingAnswer): string {
  const tunings = [...new Set([...keys, ...chords].map(({ tuning }) => tuning))];
  return tunings
    .map((tuning) => {
      const here = (over: RingingOver): boolean => over.tuning === tuning;
      const rows = [
        ...keys.filter(here).map((key) => [`key ${nameOf(key)}`, '', key.words]),
        ...chords.filter(here).map((chord) => [nameOf(chord), chord.where, chord.words]),
      ];
      const [first] = [...keys, ...chords].filter(here);
      return `${tuning}: ${(first?.strings ?? []).map(noteText).join(' ')}\n${alignedColumns(rows)}\n`;
    })
    .join('\n');
}

/** `G, sounds Bb`. */
function nameOf({ name, sounds }: RingingOver): string {
  return sounds === null ? name : `${name}, sounds ${sounds}`;
}

function noteText({ note }: RingingString): string {
  return note;
}
