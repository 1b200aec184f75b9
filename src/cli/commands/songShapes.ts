import { createLanguageService } from '../../service/languageService';
import type { Settings } from '../../service/records';
import type { SongChord } from '../../service/shapes/shapesAnswer';
import { alignedColumns } from '../alignedColumns';
import type { Asked } from '../command';
import { EXIT, type ExitCode } from '../exitCodes';
import type { Output } from '../output';
import { Refusal } from '../refusal';
import { readTextFile } from '../textFile';

/** Options that a file answers itself. */
const OF_THE_FILE = ['tuning', 'capo', 'instrument', 'frets', 'limit'];

/**
 * Tells for each chord of a file its shape in the usual tuning, the nearest one here, and what each string must do.
 * @throws {Refusal} for a file without chords, and for options that the file's fields answer
 */
export async function songShapesCommand(asked: Asked, settings: Settings, output: Output): Promise<ExitCode> {
  const given = OF_THE_FILE.find((name) => asked.values.has(name));
  if (given !== undefined)
    throw new Refusal(`--${given} is for one chord; with --song the fields of the file say it.`);
  const { text } = await readTextFile(asked.operands[0]);
  const service = createLanguageService();
  const answer = service.songShapes(service.open(text, settings), undefined, settings);
  if ('error' in answer) throw new Refusal(answer.error, EXIT.refused);
  if (asked.flags.has('json')) output.json(answer);
  else {
    const rows = answer.chords.map(rowOf);
    output.text(`${alignedColumns([['chord', 'usual', 'here', 'bars', 'what changes'], ...rows])}\n`);
  }
  output.report(answer.remarks.map((remark) => `${remark}\n`).join(''));
  return EXIT.done;
}

function rowOf({ chord, part, bars, kin, problem }: SongChord): readonly string[] {
  const where = `${part === null ? '' : `${part}: `}${bars.join(' ')}`;
  if (!kin) return [chord, '', '', where, problem ?? ''];
  const words = kin.usual && kin.here ? kin.words : kin.remarks.join(' ');
  return [chord, kin.usual?.text ?? '', kin.here?.text ?? '', where, words];
}
