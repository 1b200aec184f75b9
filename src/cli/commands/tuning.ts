import { readCapo } from '../../instrument/capo';
import { GUITAR, readInstrument } from '../../instrument/instruments';
import { retuningCaution } from '../../instrument/retuningCaution';
import { readTuning } from '../../instrument/tuningValue';
import { readChordName } from '../../music/chord/readChordName';
import { readKey } from '../../music/key';
import { createLanguageService } from '../../service/languageService';
import { bareText } from '../../service/sheet/bareText';
import type { SheetRequest } from '../../service/sheet/sheetAnswer';
import type { Asked, Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import type { Output } from '../output';
import { readable } from '../readable';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { sheetText } from './tuningText';

/** Tells what a tuning value means, and how to get there. */
export const tuning: Command = {
  name: 'tuning',
  does: 'tell a tuning: strings, the chord they make, how to get there, barres, the scale; or a handout of it',
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
    { name: 'from', value: 'T', help: 'the tuning to retune from (the instrument’s usual one without it)' },
    { name: 'key', value: 'K', help: 'the key, such as "D mixolydian": degrees and the scale go by it' },
    { name: 'capo', value: 'C', help: 'a capo as it would stand after “capo:”, such as 2' },
    { name: 'slide', help: 'tell the places of a slide player’s bar too' },
    { name: 'chord', value: 'NAME', help: 'the chord that the bar is to give, such as Am' },
    { name: 'handout', value: 'text|svg', help: 'one page to print: plain text, or a picture' },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const value = asked.operands.join(' ');
    const name = asked.values.get('instrument');
    checkValues(asked, value, settings.tunings);
    const service = createLanguageService();
    const answer = service.tuning(value, name, settings);
    if ('error' in answer) throw new Refusal(answer.error);
    const [from, chord] = [asked.values.get('from'), asked.values.get('chord')];
    const request: SheetRequest = {
      ...(from !== undefined && { from }),
      ...(chord !== undefined && { chord }),
      slide: asked.flags.has('slide'),
    };
    const [key, capo] = [asked.values.get('key'), asked.values.get('capo')];
    const document = service.open(bareText({ tuning: value, instrument: name, key, capo }), settings);
    const place = { line: document.lineCount - 1, character: 0 };
    const handout = asked.values.get('handout');
    if (handout !== undefined) {
      const page = service.tuningHandout(document, place, request, settings);
      if ('error' in page) throw new Refusal(page.error);
      if (asked.flags.has('json')) output.json(page);
      else output.text(handout === 'svg' ? `${page.svg}\n` : page.text);
      return EXIT.done;
    }
    const sheet = service.tuningSheet(document, place, request, settings);
    if ('error' in sheet) throw new Refusal(sheet.error);
    if (asked.flags.has('json')) output.json({ ...answer, sheet });
    else output.text(sheetText(answer, sheet));
    caution(sheet.retuning.cautions, Math.max(0, ...answer.strings.map(({ steps }) => steps ?? 0)), output);
    return EXIT.done;
  },
};

/** What the way asks for; else what the tuning asks for, which may lie above the usual one all the same. */
function caution(cautions: readonly string[], raisesBy: number, output: Output): void {
  const usual = retuningCaution(raisesBy);
  const told = cautions.length > 0 ? cautions : usual === undefined ? [] : [usual];
  output.report(told.map((line) => `${line}\n`).join(''));
}

/** @throws {Refusal} with one sentence for the first value that cannot be read */
function checkValues(asked: Asked, value: string, userTunings: Readonly<Record<string, string>>): void {
  const name = asked.values.get('instrument');
  const instrument = name === undefined ? GUITAR : readable('--instrument', readInstrument(name));
  const { strings } = readable(undefined, readTuning(value, { instrument, userTunings }));
  const from = asked.values.get('from');
  if (from !== undefined) readable('--from', readTuning(from, { instrument, userTunings }));
  const key = asked.values.get('key');
  if (key !== undefined) readable('--key', readKey(key));
  const capo = asked.values.get('capo');
  if (capo !== undefined) readable('--capo', readCapo(capo, strings.length, instrument.frets));
  const chord = asked.values.get('chord');
  if (chord !== undefined) readable('--chord', readChordName(chord));
  const handout = asked.values.get('handout');
  if (handout !== undefined && handout !== 'text' && handout !== 'svg')
    throw new Refusal(`--handout takes text or svg, and not “${handout}”.`);
}
