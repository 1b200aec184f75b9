import { createLanguageService } from '../../service/languageService';
import type { Diagnostic } from '../../service/records';
import type { Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile, type TextFile } from '../textFile';

/** Tells what is wrong in files, a line each; exit code 1 when something is an error. */
export const check: Command = {
  name: 'check',
  does: 'tell what is wrong in tab files, a line each: file:line:column severity code message',
  operands: { word: 'FILES…', help: 'tab files, or - for standard input', many: true },
  options: [
    JSON_OPTION,
    TUNINGS,
    {
      name: 'reach',
      value: 'MM',
      help: 'the widest stretch of one hand in millimetres (130 when it is not given)',
    },
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    if (asked.operands.filter((name) => name === '-').length > 1)
      throw new Refusal('Standard input (-) can be read once only; name it once.');
    // All are read before anything is written, so that a wrong name leaves no half answer.
    const files: TextFile[] = [];
    for (const name of asked.operands) files.push(await readTextFile(name));
    const service = createLanguageService();
    const found = files.flatMap(({ name, text }) =>
      service
        .diagnostics(service.open(text, settings), settings)
        .map((diagnostic) => entry(name, diagnostic)),
    );
    if (asked.flags.has('json')) output.json(found);
    else for (const diagnostic of found) output.text(`${lineOf(diagnostic)}\n`);
    return found.some(({ severity }) => severity === 'error') ? EXIT.refused : EXIT.done;
  },
};

type Entry = ReturnType<typeof entry>;

function entry(file: string, { range, severity, code, message }: Diagnostic) {
  return {
    file,
    line: range.start.line + 1,
    column: range.start.character + 1,
    severity,
    code,
    message,
  };
}

function lineOf({ file, line, column, severity, code, message }: Entry): string {
  return `${file}:${line}:${column} ${severity} ${code} ${message.replace(/\s*[\r\n]+\s*/g, ' ')}`;
}
