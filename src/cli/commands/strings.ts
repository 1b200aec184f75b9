import { readGauges } from '../../instrument/gauges';
import { GUITAR, readInstrument } from '../../instrument/instruments';
import { readScaleLength } from '../../instrument/scaleLength';
import { percentChange, shareWords } from '../../instrument/strings/strainWords';
import { readTuning } from '../../instrument/tuningValue';
import { readReferencePitch } from '../../music/referencePitch';
import type { TabDocument } from '../../notation/tabDocument';
import { createLanguageService } from '../../service/languageService';
import type { Settings } from '../../service/records';
import type { StringsAnswer, StringsRequest, StringStrain } from '../../service/strings/stringsAnswer';
import { alignedColumns } from '../alignedColumns';
import type { Asked, Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readable } from '../readable';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Options that say what a file says by its fields. */
const OWN = ['tuning', 'instrument', 'gauges', 'scale-length', 'reference-pitch'] as const;

/** Tells what the strings bear. */
export const strings: Command = {
  name: 'strings',
  does: 'tell what the strings bear: tension, its change against the usual set, how near plain steel is to breaking',
  operands: {
    word: '[FILE]',
    help: 'a tab file, or - for standard input, each set of its fields in turn; without one the options say it',
    many: false,
    optional: true,
  },
  options: [
    { name: 'tuning', value: 'T', help: 'a tuning, as in the field, such as DADGAD; standard without it' },
    { name: 'instrument', value: 'NAME', help: 'the instrument, such as bass (guitar when none is given)' },
    {
      name: 'gauges',
      value: 'LIST',
      help: 'thousandths of an inch, low string first, w for wound: "46w 36w 26w 17 13 10"; the usual set without it',
    },
    { name: 'scale-length', value: 'L', help: 'with its unit: "648 mm" or "25.5 in"' },
    { name: 'reference-pitch', value: 'HZ', help: 'the frequency of A4, such as 442; 440 without it' },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const [file] = asked.operands;
    const places =
      file === '' ? [{ line: null, ...requested(asked, settings) }] : await inFile(file, asked, settings);
    if (asked.flags.has('json')) output.json(places);
    else output.text(places.map(({ line, ...answer }) => placeText(line, answer)).join('\n'));
    const said = places.flatMap(({ told, remarks, cautions }) => [...told, ...remarks, ...cautions]);
    output.report([...new Set(said)].map((line) => `${line}\n`).join(''));
    return EXIT.done;
  },
};

/** An answer with the line, counted from 1, from which it holds; null where there is no file. */
type Placed = StringsAnswer & { readonly line: number | null };

function requested({ values }: Asked, settings: Settings): StringsAnswer {
  const name = values.get('instrument');
  const instrument = name === undefined ? GUITAR : readable('--instrument', readInstrument(name));
  const text = values.get('tuning') ?? instrument.usualTuning;
  const tuning = readable('--tuning', readTuning(text, { instrument, userTunings: settings.tunings }));
  const request: StringsRequest = {
    ...given(values, 'tuning', 'tuning'),
    ...given(values, 'instrument', 'instrument'),
    ...given(values, 'gauges', 'gauges', (value) => readGauges(value, tuning.strings.length, tuning)),
    ...given(values, 'scale-length', 'scaleLength', readScaleLength),
    ...given(values, 'reference-pitch', 'referencePitch', readReferencePitch),
  };
  const answer = createLanguageService().requestedStrings(request, settings);
  if ('error' in answer) throw new Refusal(answer.error);
  return answer;
}

/** The value of an option under the request's name, once its field's reader has read it. */
function given<Name extends keyof StringsRequest>(
  values: Asked['values'],
  option: (typeof OWN)[number],
  name: Name,
  read?: (value: string) => Parameters<typeof readable>[1],
): Partial<Record<Name, string>> {
  const value = values.get(option);
  if (value === undefined) return {};
  if (read) readable(`--${option}`, read(value));
  const entry: Partial<Record<Name, string>> = {};
  entry[name] = value;
  return entry;
}

/** Each set of fields that strings depend on, in the order of the file; what holds without fields where there are none. */
async function inFile(file: string, { values }: Asked, settings: Settings): Promise<readonly Placed[]> {
  const own = OWN.find((name) => values.has(name));
  if (own !== undefined)
    throw new Refusal(`--${own} goes without a file; ${file} says it in a field of its own.`);
  const { text } = await readTextFile(file);
  const service = createLanguageService();
  const document = service.open(text, settings);
  const told = new Set<string>();
  return linesOfFields(document).flatMap((line): Placed[] => {
    const answer = service.strings(document, { line, character: 0 }, settings);
    const key = JSON.stringify(answer);
    if (told.has(key)) return [];
    told.add(key);
    return [{ line: line + 1, ...answer }];
  });
}

/** The first line of each system, where what its strings are is settled; the first line of a file without systems. */
function linesOfFields(document: TabDocument): readonly number[] {
  const lines = document.systems.map(({ firstLine }) => firstLine);
  return lines.length > 0 ? lines : [document.lineCount - 1];
}

const HEADINGS = ['string', 'note', 'gauge', 'change', 'newtons', 'pounds', 'of strength', 'to breaking', ''];

function placeText(line: number | null, answer: StringsAnswer): string {
  const { instrument, tuning, notes, scaleLength, total, against } = answer;
  const names = tuning === notes ? tuning : `${tuning} (${notes})`;
  const title = `${line === null ? '' : `Line ${line}: `}${instrument}, ${names}, ${scaleLength} mm`;
  const rows = answer.strings.map(row);
  const whole = total
    ? [
        [
          'all',
          '',
          '',
          total.change ? percentChange(total.change.ratio) : '',
          total.newtons.toFixed(1),
          total.pounds.toFixed(1),
        ],
      ]
    : [];
  const table = alignedColumns([HEADINGS, ...rows, ...whole], [0, 3, 4, 5, 6, 7]);
  return `${title}\n\n${table}\n\nChanges are counted from ${against}.\n`;
}

function row({
  number,
  course,
  note,
  gauge,
  change,
  newtons,
  pounds,
  steel,
  state,
  suggestedGauge,
}: StringStrain): string[] {
  const notes = [
    ...(QUIET.includes(state) ? [] : [STATE_WORDS[state]]),
    ...(suggestedGauge === null ? [] : [`${suggestedGauge} pulls about as usual`]),
  ];
  return [
    course === 1 ? String(number) : `${number}, second`,
    note,
    gauge ?? '–',
    change ? percentChange(change.ratio) : '–',
    newtons === null ? '–' : newtons.toFixed(1),
    pounds === null ? '–' : pounds.toFixed(1),
    steel ? shareWords(steel.share) : '',
    steel ? `${steel.halfStepsToBreaking.toFixed(1)} half steps` : '',
    notes.join('; '),
  ];
}

const QUIET: readonly StringStrain['state'][] = ['as usual', 'changed', 'unknown'];

const STATE_WORDS: Readonly<Record<StringStrain['state'], string>> = {
  'as usual': '',
  changed: '',
  unknown: '',
  slack: 'slack',
  'first to break': 'the first to break',
  information: 'high',
  warning: 'near breaking',
  error: 'cannot be strung',
  outside: 'no published weight',
};
