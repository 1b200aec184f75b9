import type { Header } from '../notation/header';
import type { Range, TabDocument } from '../notation/tabDocument';
import type { Settings } from '../service/records';
import { createLanguageService } from '../service/languageService';
import type { ChangeResult, LanguageService, Report } from '../service/serviceApi';
import { applyEdits } from './applyEdits';
import type { Asked } from './command';
import { EXIT, type ExitCode } from './exitCodes';
import { readLineRange } from './lineRange';
import type { Output } from './output';
import { Refusal } from './refusal';
import { settingsOf } from './settings';
import { readTextFile } from './textFile';

/** What the commands that change a passage work on. */
export interface ChangeTask {
  readonly service: LanguageService;
  readonly document: TabDocument;
  readonly settings: Settings;
  /** Undefined for the whole file. */
  readonly range: Range | undefined;
  /** The fields in force where the passage begins. */
  readonly header: Header;
}

/**
 * Runs a command that changes a passage: the new text on standard output, what became of the notes on standard error.
 * @param change reads what is asked, refusing what cannot be read, and asks the service
 * @throws {Refusal} with exit code 1 when the passage cannot be changed so
 */
export async function runChange(
  asked: Asked,
  output: Output,
  change: (task: ChangeTask) => ChangeResult,
): Promise<ExitCode> {
  const settings = await settingsOf(asked);
  const file = await readTextFile(asked.operands[0]);
  const service = createLanguageService();
  const document = service.open(file.text, settings);
  const lines = asked.values.get('lines');
  const range = lines === undefined ? undefined : readLineRange(lines, document);
  const result = change({ service, document, settings, range, header: headerOf(document, range) });
  if ('error' in result) throw new Refusal(result.error, EXIT.refused);
  const text = file.mark + applyEdits(file.text, result.edits);
  const { notesIn, kept, moved, unplaced } = result.report;
  output.report(reportLines(result.report));
  if (asked.flags.has('json')) output.json({ text, report: { notesIn, kept, moved, unplaced } });
  else output.text(text);
  return EXIT.done;
}

function headerOf(document: TabDocument, range: Range | undefined): Header {
  const first = document.systems.find(
    ({ firstLine, lines }) =>
      range === undefined || (firstLine <= range.end.line && firstLine + lines.length > range.start.line),
  );
  return first?.header ?? document.headerAt(range?.start.line ?? document.lineCount - 1);
}

/**
 * Reads the value of `--keep`.
 * @throws {Refusal} for another word
 */
export function keepOf({ values }: Asked): 'sound' | 'shapes' {
  const keep = values.get('keep') ?? 'sound';
  if (keep === 'sound' || keep === 'shapes') return keep;
  throw new Refusal(`--keep takes sound or shapes; “${keep}” is neither.`);
}

function reportLines({ notesIn, kept, moved, unplaced, remarks }: Report): string {
  const lines = [
    `${notesIn} ${notesIn === 1 ? 'note' : 'notes'}: ${kept} kept, ${moved} moved, ${unplaced.length} unplaced.`,
    ...unplaced.map(
      ({ part, bar, name, reason }) =>
        `${part === undefined ? 'Bar' : `${part}, bar`} ${bar}: ${name} is left out: ${reason}.`,
    ),
    ...remarks,
  ];
  return lines.map((line) => `${line}\n`).join('');
}
