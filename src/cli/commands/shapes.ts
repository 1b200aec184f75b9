import { readCapo } from '../../instrument/capo';
import { GUITAR, readInstrument } from '../../instrument/instruments';
import { readTuning } from '../../instrument/tuningValue';
import { usualTuning } from '../../notation/headerViews';
import { createLanguageService } from '../../service/languageService';
import type { Settings } from '../../service/records';
import type { ShapeAnswer, ShapeKinAnswer, ShapesAnswer } from '../../service/shapes/shapesAnswer';
import { alignedColumns } from '../alignedColumns';
import type { Asked, Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT, type ExitCode } from '../exitCodes';
import { numberOf } from '../optionValues';
import type { Output } from '../output';
import { readable } from '../readable';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { songShapesCommand } from './songShapes';

/** Finds the shapes of a chord, or what became of those of the usual tuning. */
export const shapes: Command = {
  name: 'shapes',
  does: 'find the shapes of a chord in a tuning, or what each chord of a song asks of the strings',
  operands: {
    word: 'CHORD|FILE',
    help: 'a chord, such as G/B or Dsus4; with --song a tab file, or - for standard input',
    many: false,
  },
  options: [
    { name: 'tuning', value: 'T', help: 'the tuning, such as DADGAD; the usual one without it' },
    { name: 'capo', value: 'C', help: 'the capo, such as 3 or "2 on 5 4 3"; chords are named as played' },
    {
      name: 'instrument',
      value: 'NAME',
      help: 'the instrument, such as ukulele (guitar when none is given)',
    },
    { name: 'frets', value: 'N', help: 'the highest fret to look at, 0 to 36; 15 without it' },
    { name: 'limit', value: 'N', help: 'how many shapes to give at most, 1 to 200; 12 without it' },
    { name: 'reach', value: 'MM', help: 'the widest stretch of your hand, in millimetres; 130 without it' },
    { name: 'slide', help: 'one straight bar in place of fingers' },
    { name: 'usual', help: 'the everyday shape of the usual tuning beside the nearest one here' },
    { name: 'song', help: 'every chord of a tab file, each beside its shape in the usual tuning' },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    if (asked.flags.has('song')) return songShapesCommand(asked, settings, output);
    const service = createLanguageService();
    const document = service.open(fieldsOf(asked, settings), settings);
    const place = { line: document.lineCount - 1, character: 0 };
    const [chord] = asked.operands;
    if (asked.flags.has('usual')) {
      const answer = service.shapeKin(document, place, { chord }, settings);
      if ('error' in answer) throw new Refusal(answer.error);
      return tellKin(answer, asked, output);
    }
    const answer = service.shapes(document, place, { chord, ...limitsOf(asked) }, settings);
    if ('error' in answer) throw new Refusal(answer.error);
    return tellShapes(answer, asked, output);
  },
};

/** The fields that the options stand for, as a text that opens under them. */
function fieldsOf({ values, flags }: Asked, settings: Settings): string {
  const name = values.get('instrument');
  const instrument = name === undefined ? GUITAR : readable('--instrument', readInstrument(name));
  const value = values.get('tuning');
  const tuning =
    value === undefined
      ? usualTuning(instrument)
      : readable('--tuning', readTuning(value, { instrument, userTunings: settings.tunings }));
  const capo = values.get('capo');
  if (capo !== undefined) readable('--capo', readCapo(capo, tuning.strings.length, instrument.frets));
  return [
    `instrument: ${instrument.name}`,
    ...(value === undefined ? [] : [`tuning: ${value}`]),
    ...(capo === undefined ? [] : [`capo: ${capo}`]),
    ...(flags.has('slide') ? ['fretting: slide'] : []),
    '',
  ].join('\n');
}

function limitsOf(asked: Asked): { readonly limit?: number; readonly highestFret?: number } {
  const limit = numberOf(asked, 'limit', { whole: true, least: 1, most: 200 });
  const highestFret = numberOf(asked, 'frets', { whole: true, least: 0, most: 36 });
  return { ...(limit !== undefined && { limit }), ...(highestFret !== undefined && { highestFret }) };
}

function tellShapes(answer: ShapesAnswer, asked: Asked, output: Output): ExitCode {
  if (asked.flags.has('json')) output.json(answer);
  else if (answer.shapes.length === 0) throw new Refusal(answer.remarks.join(' '), EXIT.refused);
  else output.text(shapesText(answer));
  output.report(answer.remarks.map((remark) => `${remark}\n`).join(''));
  return answer.shapes.length === 0 ? EXIT.refused : EXIT.done;
}

function shapesText({ shapes: all }: ShapesAnswer): string {
  return `${alignedColumns([['frets', 'fingers', 'sounds', ''], ...all.map(rowOf)])}\n`;
}

function rowOf({ text, fingers, name, short }: ShapeAnswer): readonly string[] {
  return [
    text,
    fingers.map((finger) => (finger === null ? '.' : finger === 0 ? '0' : String(finger))).join(' '),
    name,
    short,
  ];
}

function tellKin(answer: ShapeKinAnswer, asked: Asked, output: Output): ExitCode {
  if (asked.flags.has('json')) output.json(answer);
  else output.text(`${kinText(answer)}\n`);
  output.report(answer.remarks.map((remark) => `${remark}\n`).join(''));
  return answer.here === null ? EXIT.refused : EXIT.done;
}

function kinText({ chord, usual, here, usualTuning: before, tuning, words }: ShapeKinAnswer): string {
  const rows = [
    [`${chord} in ${before}`, usual?.text ?? 'no shape'],
    [`${chord} in ${tuning}`, here?.text ?? 'no shape'],
  ];
  return usual && here ? `${alignedColumns(rows)}\n${words}` : alignedColumns(rows);
}
