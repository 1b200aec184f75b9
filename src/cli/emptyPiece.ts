import { readCapo } from '../instrument/capo';
import { GUITAR, readInstrument } from '../instrument/instruments';
import { readTuning } from '../instrument/tuningValue';
import { readKey } from '../music/key';
import { readMeter } from '../music/meter';
import { createLanguageService } from '../service/languageService';
import type { Place, Settings } from '../service/records';
import type { ChangeResult, EditableDocument, LanguageService } from '../service/serviceApi';
import type { Asked, Option } from './command';
import { JSON_OPTION, TUNINGS } from './commonOptions';
import { EXIT, type ExitCode } from './exitCodes';
import type { Output } from './output';
import { readable } from './readable';
import { Refusal } from './refusal';
import { settingsOf } from './settings';

/** What may be said of the piece that a command writes. */
export const PIECE_OPTIONS: readonly Option[] = [
  { name: 'tuning', value: 'T', help: 'the tuning, by name or notes, such as DADGAD' },
  {
    name: 'instrument',
    value: 'NAME',
    help: 'the instrument, such as ukulele (guitar when none is given)',
  },
  { name: 'capo', value: 'C', help: 'the capo, such as 2; names of notes are those that sound' },
  { name: 'key', value: 'K', help: 'the key, as played, such as "D mixolydian"' },
  { name: 'meter', value: 'M', help: 'the meter, such as 3/4 (4/4 when none is given)' },
  JSON_OPTION,
  TUNINGS,
];

export const VALUE: Option = {
  name: 'value',
  value: 'LENGTH',
  help: 'the length of a note: eighth (the default), quarter, dotted quarter, eighth triplet …',
};

/** What a command works on: a piece with nothing but fields. */
export interface EmptyPiece {
  readonly service: LanguageService;
  readonly document: EditableDocument;
  readonly place: Place;
  readonly settings: Settings;
}

/**
 * Writes into an empty piece with the fields that the options name, and prints the tab that comes of it.
 * @throws {Refusal} for an option that cannot be read; with exit code 1 where nothing can be written
 */
export async function writePiece(
  asked: Asked,
  output: Output,
  write: (piece: EmptyPiece) => ChangeResult,
): Promise<ExitCode> {
  const settings = await settingsOf(asked);
  const fields = fieldsOf(asked, settings);
  const service = createLanguageService();
  const document = service.open(`${fields.join('\n')}\n`, settings);
  const place = { line: fields.length, character: 0 };
  const result = write({ service, document, place, settings });
  if ('error' in result)
    throw new Refusal(
      result.asks === 'key' ? 'Degrees are counted in a key: give one with --key.' : result.error,
      EXIT.refused,
    );
  document.edit(result.edits);
  const lines = document.text().trimEnd().split('\n');
  const first = lines.findIndex((line, i) => i >= fields.length && line.trim() !== '');
  const text = `${lines.slice(first).join('\n')}\n`;
  const { notesIn, kept, moved, unplaced, remarks } = result.report;
  if (asked.flags.has('json'))
    output.json({
      text,
      // Their lines are those of the text.
      notes: service.notes(document).map((note) => ({ ...note, line: note.line - first })),
      report: { notesIn, kept, moved, unplaced, remarks },
    });
  else output.text(text);
  const lost = unplaced.map(({ bar, name, reason }) => `Bar ${bar}: ${name} is left out: ${reason}.`);
  output.report([...remarks, ...lost].map((line) => `${line}\n`).join(''));
  return EXIT.done;
}

/** The fields, each read first, so that what is wrong is told with the option's name. */
function fieldsOf({ values }: Asked, settings: Settings): readonly string[] {
  const given = (name: string): string | undefined => values.get(name);
  const [name, tuning, capo, key, meter] = ['instrument', 'tuning', 'capo', 'key', 'meter'].map(given);
  const instrument = name === undefined ? GUITAR : readable('--instrument', readInstrument(name));
  const strings = readable(
    '--tuning',
    readTuning(tuning ?? instrument.usualTuning, { instrument, userTunings: settings.tunings }),
  );
  if (capo !== undefined) readable('--capo', readCapo(capo, strings.strings.length, instrument.frets));
  if (key !== undefined) readable('--key', readKey(key));
  if (meter !== undefined) readable('--meter', readMeter(meter));
  const field = (word: string, value: string | undefined): string[] =>
    value === undefined ? [] : [`${word}: ${value.replace(/\s+/g, ' ')}`];
  return [
    `instrument: ${instrument.name}`,
    ...field('tuning', tuning),
    ...field('capo', capo),
    ...field('key', key),
    ...field('meter', meter),
  ];
}
