import { createLanguageService } from '../../service/languageService';
import type { SuitedTuning, SuitRequest, SuitResult, SuitStep } from '../../service/serviceApi';
import { alignedColumns } from '../alignedColumns';
import type { Command } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readLineRange } from '../lineRange';
import { numberOf } from '../optionValues';
import type { Output } from '../output';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Tells which tuning makes a passage easiest. */
export const suit: Command = {
  name: 'suit',
  does: 'find the tuning in which a passage is easiest',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    { name: 'within', value: 'N', help: 'retune each string by up to N half steps, 0 to 3; 2 is usual' },
    { name: 'any-key', help: 'the passage may be transposed as well' },
    { name: 'best', value: 'N', help: 'how many retunings to list; 10 is usual' },
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const within = numberOf(asked, 'within', { whole: true, least: 0, most: 3 });
    const keep = numberOf(asked, 'best', { whole: true, least: 1, most: 100 });
    const settings = await settingsOf(asked);
    const { text } = await readTextFile(asked.operands[0]);
    const service = createLanguageService();
    const document = service.open(text, settings);
    const lines = asked.values.get('lines');
    const request: SuitRequest = {
      range: lines === undefined ? undefined : readLineRange(lines, document),
      ...(within !== undefined && { within }),
      ...(keep !== undefined && { keep }),
      anyKey: asked.flags.has('any-key'),
    };
    const progress = new Progress(output);
    const search = service.suit(document, request, settings);
    let step = search.next();
    while (!step.done) {
      progress.tell(step.value);
      step = search.next();
    }
    if ('error' in step.value) throw new Refusal(step.value.error, EXIT.refused);
    const { remarks, cautions } = step.value;
    if (asked.flags.has('json')) output.json(step.value);
    else output.text(tables(step.value));
    output.report([...remarks, ...cautions].map((line) => `${line}\n`).join(''));
    return EXIT.done;
  },
};

/** Says how far a search has come, one line at each tenth. */
class Progress {
  private told = '';

  constructor(private readonly output: Output) {}

  tell({ done, total, phase }: SuitStep): void {
    const tenths = total === 0 ? 10 : Math.floor((10 * done) / total);
    const what = phase === 'named' ? 'named tunings' : 'retunings';
    const line = `${what}: ${tenths * 10} % of ${total}`;
    if (line === this.told || tenths === 0) return;
    this.told = line;
    this.output.report(`${line}\n`);
  }
}

const HEADINGS = ['cost', 'tuning', 'notes', 'retuning', 'moved', 'why'];

function tables({ here, named, best, byStringsChanged }: SuitResult): string {
  const rows = (list: readonly SuitedTuning[]): string =>
    alignedColumns([HEADINGS, ...list.map(row)], [0, 4]);
  const parts = [
    ...(here ? [`As it stands\n${rows([here])}`] : ['As it stands some notes would be left out.']),
    ...(named.length > 0 ? [`Named tunings\n${rows(named)}`] : []),
    ...(best.length > 0 ? [`Retunings, the easiest first\n${rows(best)}`] : []),
    ...(byStringsChanged.length > 0
      ? [
          `The best for each number of strings changed\n${alignedColumns(
            [
              ['strings', ...HEADINGS],
              ...byStringsChanged.map(({ changed, tuning }) => [String(changed), ...row(tuning)]),
            ],
            [0, 1, 5],
          )}`,
        ]
      : []),
  ];
  return `${parts.join('\n\n')}\n`;
}

function row({ cost, name, notes, steps, halfSteps, why }: SuitedTuning): string[] {
  return [
    cost === null ? '–' : cost.toFixed(1),
    name ?? '',
    notes,
    steps,
    halfSteps === 0 ? '' : String(halfSteps),
    why,
  ];
}
