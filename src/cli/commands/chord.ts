import { GUITAR } from '../../instrument/instruments';
import { readTuning } from '../../instrument/tuningValue';
import { readKey } from '../../music/key';
import { createLanguageService } from '../../service/languageService';
import type { ChordAnswer } from '../../service/serviceApi';
import { alignedColumns } from '../alignedColumns';
import type { Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readable } from '../readable';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';

/** Names what sounds together. */
export const chord: Command = {
  name: 'chord',
  does: 'name the chord that sounding notes make, likeliest name first',
  operands: { word: 'NOTES…', help: 'the sounding notes, low string first, such as D2 A2 D3 G3', many: true },
  options: [
    { name: 'key', value: 'K', help: 'the key that spells the names, such as "D mixolydian"' },
    { name: 'tuning', value: 'T', help: 'the tuning they are played in, such as DADGAD' },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const key = asked.values.get('key');
    const tuning = asked.values.get('tuning');
    if (key !== undefined) readable('--key', readKey(key));
    if (tuning !== undefined)
      readable('--tuning', readTuning(tuning, { instrument: GUITAR, userTunings: settings.tunings }));
    const written = asked.operands
      .flatMap((operand) => operand.split(/[\s,]+/))
      .filter((note) => note !== '');
    const answer = createLanguageService().chord(written, key, tuning, settings);
    if ('error' in answer) throw new Refusal(answer.error);
    if (asked.flags.has('json')) output.json(answer);
    else output.text(chordText(answer));
    return EXIT.done;
  },
};

function chordText({ kind, names }: ChordAnswer): string {
  if (names.length === 0) return `${kind}: these notes make no chord that has an everyday name\n`;
  const rows = names.map(({ name, tones, omitted }) => [
    name,
    tones.join(' '),
    omitted.length > 0 ? `without ${omitted.join(', ')}` : '',
  ]);
  return `${alignedColumns(rows)}\n`;
}
