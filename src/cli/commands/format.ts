import { writeFile } from 'node:fs/promises';
import { createLanguageService } from '../../service/languageService';
import { applyEdits } from '../applyEdits';
import type { Asked, Command } from '../command';
import { TUNINGS } from '../commonOptions';
import { EXIT, type ExitCode } from '../exitCodes';
import type { Output } from '../output';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile, type TextFile } from '../textFile';

/** A file as it is and as it would be. */
interface Formatted {
  readonly file: TextFile;
  readonly text: string;
}

/** Sets tab files in order; nothing that sounds changes. */
export const format: Command = {
  name: 'format',
  does: 'set tab files in order: labels padded, bar signs under each other, lines of one length; no sound changes',
  operands: { word: 'FILES…', help: 'tab files, or - for standard input', many: true },
  options: [
    { name: 'write', help: 'write the files instead of printing the text' },
    {
      name: 'check',
      help: 'print the names of files that are not in order, and change nothing; exit code 1 if any',
    },
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    checkOptions(asked);
    const service = createLanguageService();
    // All are read before anything is written, so that a wrong name leaves no half of the work.
    const all: Formatted[] = [];
    for (const name of asked.operands) {
      const file = await readTextFile(name);
      all.push({ file, text: applyEdits(file.text, service.format(service.open(file.text, settings))) });
    }
    if (asked.flags.has('check')) return check(all, output);
    if (asked.flags.has('write')) return write(all, output);
    for (const { file, text } of all) output.text(file.mark + text);
    return EXIT.done;
  },
};

function checkOptions({ operands, flags }: Asked): void {
  const [write, check] = [flags.has('write'), flags.has('check')];
  if (write && check)
    throw new Refusal('--check changes nothing, so it does not go with --write; leave one out.');
  if (operands.length > 1 && !write && !check)
    throw new Refusal('The text of one file can be printed; for several files say --write or --check.');
  if (!operands.includes('-')) return;
  if (write)
    throw new Refusal('Standard input (-) cannot be written; leave --write out to have the text printed.');
  if (operands.filter((name) => name === '-').length > 1)
    throw new Refusal('Standard input (-) can be read once only; name it once.');
}

function check(all: readonly Formatted[], output: Output): ExitCode {
  const changed = all.filter(isChanged);
  for (const { file } of changed) output.text(`${file.name}\n`);
  output.report(`${all.length - changed.length} of ${counted(all.length)} in order.\n`);
  return changed.length > 0 ? EXIT.refused : EXIT.done;
}

async function write(all: readonly Formatted[], output: Output): Promise<ExitCode> {
  const changed = all.filter(isChanged);
  for (const { file, text } of changed) {
    try {
      await writeFile(file.name, file.mark + text);
    } catch (error) {
      const why = error instanceof Error && 'code' in error ? String(error.code) : String(error);
      throw new Refusal(`${file.name} cannot be written (${why}); see its permissions.`);
    }
    output.text(`${file.name}\n`);
  }
  output.report(`${changed.length} of ${counted(all.length)} changed.\n`);
  return EXIT.done;
}

function isChanged({ file, text }: Formatted): boolean {
  return text !== file.text;
}

function counted(files: number): string {
  return files === 1 ? '1 file' : `${files} files`;
}
