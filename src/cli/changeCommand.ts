import type { Header } from '../notation/header';
import type { Range, System, TabDocument } from '../notation/tabDocument';
import type { Settings } from '../service/records';
import { createLanguageService } from '../service/languageService';
import type { ChangeResult, ConvertRequest, LanguageService, Report, Variant } from '../service/serviceApi';
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
  const [name] = asked.operands;
  const file = await readTextFile(name);
  const service = createLanguageService();
  const document = service.open(file.text, settings);
  const lines = asked.values.get('lines');
  const range = lines === undefined ? undefined : readLineRange(lines, document);
  const result = change({ service, document, settings, range, header: headerOf(document, range) });
  if ('error' in result) {
    const noTab =
      lines === undefined ? `There is no tab in ${name === '-' ? 'standard input' : name}.` : noTabOn(lines);
    throw new Refusal(firstSystem(document, range) ? result.error : noTab, EXIT.refused);
  }
  const textOf = ({ edits }: Variant): string => file.mark + applyEdits(file.text, edits);
  const text = textOf(result);
  const { alternatives = [], report } = result;
  output.report(reportLines(report) + offerLines(report) + alternativeLines(alternatives));
  if (asked.flags.has('json'))
    output.json({
      text,
      report: plainReport(report),
      ...(alternatives.length > 0 && {
        alternatives: alternatives.map((way) => ({
          title: way.title ?? '',
          text: textOf(way),
          report: plainReport(way.report),
        })),
      }),
    });
  else output.text(text);
  return EXIT.done;
}

/** The figures of a report, without the sentences that stand on standard error. */
function plainReport({ notesIn, kept, moved, unplaced, measures, compared, offers }: Report): object {
  return {
    notesIn,
    kept,
    moved,
    unplaced,
    ...(measures && { measures }),
    ...(compared && { compared }),
    ...(offers && { offers: offers.map(({ title, request }) => ({ title, options: optionsOf(request) })) }),
  };
}

/** What else could be asked, with the options that ask for it. */
function offerLines({ offers = [] }: Report): string {
  return offers.map(({ title, request }) => `${title}: ${optionsOf(request)}\n`).join('');
}

/** What an offer adds to a command line. */
function optionsOf({ leaveOut, octaves, by, capo }: ConvertRequest): string {
  return [
    ...(leaveOut ? [`--leave-out ${leaveOut}`] : []),
    ...(octaves ? ['--octaves'] : []),
    ...(by === undefined ? [] : [`--by ${by}`]),
    ...(capo === undefined ? [] : [`--capo "${capo}"`]),
  ].join(' ');
}

function alternativeLines(alternatives: readonly Variant[]): string {
  return alternatives
    .map(({ title, report: { measures } }, i) => {
      const cost = measures ? `, cost ${measures.cost.toFixed(1)}` : '';
      return `Another way (${i + 2}): ${title ?? 'other strings'}${cost}; --json gives its text.\n`;
    })
    .join('');
}

function headerOf(document: TabDocument, range: Range | undefined): Header {
  const first = firstSystem(document, range);
  return first?.header ?? document.headerAt(range?.start.line ?? document.lineCount - 1);
}

function noTabOn(lines: string): string {
  return `--lines ${lines}: no tab stands on these lines; give lines of a system, counted from 1.`;
}

function firstSystem(document: TabDocument, range: Range | undefined): System | undefined {
  return document.systems.find(
    ({ firstLine, lines }) =>
      range === undefined || (firstLine <= range.end.line && firstLine + lines.length > range.start.line),
  );
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
    // What writes something new has no notes to account for.
    ...(notesIn === 0 && remarks.length > 0
      ? []
      : [
          `${notesIn} ${notesIn === 1 ? 'note' : 'notes'}: ${kept} kept, ${moved} moved, ${unplaced.length} unplaced.`,
        ]),
    ...unplaced.map(
      ({ part, bar, name, reason }) =>
        `${part === undefined ? 'Bar' : `${part}, bar`} ${bar}: ${name} is left out: ${reason}.`,
    ),
    ...remarks,
  ];
  return lines.map((line) => `${line}\n`).join('');
}
