import { createLanguageService } from '../../service/languageService';
import type { SoundPattern, SoundWish } from '../../service/find/findAnswer';
import type { Range, Settings } from '../../service/records';
import type { LanguageService, ServiceError } from '../../service/serviceApi';
import type { Asked, Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readLineRange } from '../lineRange';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { tabFiles } from '../tabFiles';
import { readTextFile } from '../textFile';

/** Finds passages that sound alike, in folders. */
export const find: Command = {
  name: 'find',
  does: 'find passages that sound like a tune, in any key, tuning and capo',
  operands: {
    word: 'FOLDERS…',
    help: 'where to look: folders, with all folders in them, or tab files',
    many: true,
  },
  options: [
    { name: 'notes', value: 'NOTES', help: 'the tune by its notes, such as "D4 E4 F#4"' },
    { name: 'like', value: 'FILE', help: 'a tab that holds what to look for, on its --lines and --columns' },
    {
      name: 'lines',
      value: 'A-B',
      help: 'lines of that tab, counted from 1, such as 12-17; all of them when not given',
    },
    { name: 'columns', value: 'C-D', help: 'characters of these lines, counted from 1, such as 8-30' },
    { name: 'chords', help: 'all notes that begin together count, and not the highest ones alone' },
    { name: 'rhythm', help: 'the rhythm must be the same, too' },
    { name: 'over', help: 'lower notes may be played between those of the tune' },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const service = createLanguageService();
    const { pattern, file: own } = await patternOf(asked, service, settings);
    const wish: SoundWish = {
      by: asked.flags.has('chords') ? 'chords' : 'tune',
      rhythm: asked.flags.has('rhythm'),
      over: asked.flags.has('over'),
    };
    const found = [];
    for (const file of await tabFiles(asked.operands)) {
      const { text } = await readTextFile(file);
      const index = service.soundIndex(service.open(text, settings));
      const passages = given(service.findBySound(pattern, index, wish, file === own));
      found.push(...passages.map((passage) => ({ file, ...passage })));
    }
    if (asked.flags.has('json')) output.json(found);
    else if (found.length === 0) output.report(`Nothing else sounds like ${pattern.name}.\n`);
    for (const { file, ranges, words } of asked.flags.has('json') ? [] : found) {
      const { line, character } = ranges[0]?.start ?? { line: 0, character: 0 };
      output.text(`${file}:${line + 1}:${character + 1} ${words}\n`);
    }
    return EXIT.done;
  },
};

async function patternOf(
  asked: Asked,
  service: LanguageService,
  settings: Settings,
): Promise<{ pattern: SoundPattern; file: string | undefined }> {
  const { values } = asked;
  const [notes, like] = [values.get('notes'), values.get('like')];
  if ((notes === undefined) === (like === undefined))
    throw new Refusal(
      'Give what to look for: --notes "D4 E4 F#4", or --like FILE with its --lines; one of them.',
    );
  if (like === undefined) return { pattern: given(service.typedPattern(notes ?? '')), file: undefined };
  const { text } = await readTextFile(like);
  const document = service.open(text, settings);
  const lines = values.get('lines');
  const whole = {
    start: { line: 0, character: 0 },
    end: { line: document.lineCount - 1, character: document.line(document.lineCount - 1).text.length },
  };
  const range = lines === undefined ? whole : readLineRange(lines, document);
  const pattern = given(service.soundPattern(document, columnsOf(range, values.get('columns'))));
  return { pattern, file: like };
}

/** The characters of each line, as a column selection has them. */
function columnsOf(range: Range, value: string | undefined): readonly Range[] {
  if (value === undefined) return [range];
  const match = /^\s*(\d+)\s*[-–]\s*(\d+)\s*$/.exec(value);
  const [first, last] = [Number(match?.[1]), Number(match?.[2])];
  if (!(first >= 1 && last >= first))
    throw new Refusal(`--columns takes the first and last character, such as 8-30; “${value}” is neither.`);
  return Array.from({ length: range.end.line - range.start.line + 1 }, (_, i) => ({
    start: { line: range.start.line + i, character: first - 1 },
    end: { line: range.start.line + i, character: last },
  }));
}

/** @throws {Refusal} with the sentence that the service gives */
function given<T extends object>(answer: T | ServiceError): T {
  if ('error' in answer) throw new Refusal(answer.error);
  return answer;
}
